import { appendFile, mkdir, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Locator, Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { temporaryFolder } from '../main/fixtures/temporary-folder.ts'
import { workshopJob } from '../main/fixtures/workshop-job.ts'
import { inHost } from './harness/at-the-bench.ts'
import { givePictures } from './harness/kept-pictures.ts'
import { localLauncher } from './harness/local-launcher.ts'
import type { Person } from './harness/person.ts'
import { openCard, sheetReady } from './steps.ts'

const DIMENSION = 'drum_length'

/** The card of a dimension, in a window of which nothing is waited for longer than ten seconds. */
async function cardIn(person: Person): Promise<Locator> {
  person.page.setDefaultTimeout(10_000)
  return openCard(person, DIMENSION)
}

interface Known {
  title: string
  folder: string
}

async function titled(title: string): Promise<Known> {
  const { folder } = await workshopJob((job) => ({ ...job, title }))
  await givePictures(folder)
  return { title, folder }
}

/** A home from which these jobs were open before, so that one window comes to all of them. */
async function homeThatKnows(jobs: readonly Known[]): Promise<string> {
  const home = await temporaryFolder()
  const known = jobs.map((job) => ({ ...job, openedAt: '2026-03-01T09:30:00.000Z' }))
  const recent = { format: 'scantling-recent', version: 1, jobs: known }
  await mkdir(join(home, 'settings'))
  await writeFile(join(home, 'settings', 'recent.json'), JSON.stringify(recent))
  return home
}

/** Opens one of the jobs that the start page lists. @returns its folder */
async function openKnown(person: Person, jobs: readonly Known[], title: string): Promise<string> {
  await person.click(person.button(new RegExp(`^${title}`)))
  await sheetReady(person.page)
  return jobs.find((job) => job.title === title)?.folder ?? ''
}

/** Closes a job in which something is written that can't be kept, which holds it open once. */
async function putAway(person: Person): Promise<void> {
  const close = person.button('Close this job')
  await person.click(close)
  await person.page
    .getByText(/^Caution: Not closed, for something that was written is not kept yet/)
    .waitFor()
  await person.click(close)
  await close.waitFor({ state: 'detached' })
}

const banners = (page: Page): Locator => page.locator('.frame-banners')

describe('A second window that looks on', () => {
  inHost(localLauncher(), (session) => {
    it('names who came since, says that the job went on, and takes over once it is free', async () => {
      const { folder } = await workshopJob()
      await session({ opens: { folder } }, async ({ page: first, person: there }) => {
        await session({ opens: { folder } }, async ({ page, person: here }) => {
          await banners(page).getByText('they are at work on this machine').waitFor()
          const card = await cardIn(here)
          await here.click(card.getByRole('button', { name: 'History' }))

          await there.click(there.button(/^At work/))
          await there.click(first.getByText('Somebody else…'))
          await first.getByRole('textbox', { name: 'Name' }).waitFor()
          await there.write('Eve')
          await there.press('Enter')
          const theirs = await cardIn(there)
          await there.click(theirs.getByRole('button', { name: 'Add evidence' }))
          await there.write('217 mm')
          await there.press('Enter')
          const piece = theirs.getByRole('region', { name: /^Printed 2/ })
          await there.click(piece.getByRole('button', { name: /^Adopt this/ }))

          await banners(page).getByText('The job went on since it was read here').waitFor()
          await here.click(card.getByRole('button', { name: 'History' }))
          await here.click(card.getByRole('button', { name: 'History' }))
          await card.getByText('adopted printed 2 for drum_length').waitFor()
          expect(await card.locator('.history-section-when').first().textContent()).toMatch(/^Eve, /)

          await here.click(here.button('Look again'))
          await card.getByRole('region', { name: /^Printed 2/ }).waitFor()
          await there.click(first.getByRole('button', { name: 'Close this job' }))
          await here.click(here.button('Open for writing'))
          await banners(page).getByText('read-only').waitFor({ state: 'detached' })
          await card.getByRole('button', { name: 'Add evidence' }).waitFor()
        })
      })
    })
  })
})

describe('What was typed stays when the folder is touched and the edit refused', () => {
  const touches: [what: string, touch: (folder: string) => Promise<unknown>][] = [
    ['the history is removed', (folder) => rm(join(folder, 'history.ndjson'))],
    ['the history is added to', (folder) => appendFile(join(folder, 'history.ndjson'), 'theirs\n')],
    ['job.json is removed', (folder) => rm(join(folder, 'job.json'))],
    ['the lock is removed', (folder) => rm(join(folder, '.lock'))],
  ]
  inHost(localLauncher(), (session) => {
    it('whatever is touched, and also in the form of a reading, until it is put away', async () => {
      const jobs = await Promise.all([...touches.map(([what]) => what), 'a reading'].map(titled))
      await session({ opens: 'start', home: await homeThatKnows(jobs) }, async ({ page, person, window }) => {
        page.setDefaultTimeout(10_000)
        // What the host writes of the refusal is expected, and looked at by itself.
        const refusals = () => (window.log as string[]).splice(0)
        for (const [what, touch] of touches) {
          const folder = await openKnown(person, jobs, what)
          const card = await cardIn(person)
          await person.click(card.getByRole('button', { name: 'Add evidence' }))
          await person.write('217 mm')
          await person.press('Enter')
          await card.getByRole('region', { name: /^Printed 2/ }).waitFor()
          await person.fill(card.getByRole('textbox', { name: 'Note' }), 'Worn at one end.')
          await touch(folder)
          await person.click(card.getByRole('button', { name: 'Add evidence' }))
          const told = page.getByRole('region', { name: 'Notices' })
          await told.getByText('Worn at one end.').waitFor()
          const note = card.getByRole('textbox', { name: 'Note' })
          expect(await note.inputValue()).toBe('Worn at one end.')
          expect(await note.isDisabled()).toBe(false)

          // Why is said once, above; the notice holds what was written.
          const banner = (await banners(page).locator('[data-read-only]').textContent()) ?? ''
          expect(banner).toContain('read-only')
          const why = banner.slice(banner.indexOf(folder), banner.indexOf(folder) + 90)
          expect(((await page.locator('body').textContent()) ?? '').split(why)).toHaveLength(2)
          expect(refusals(), what).toEqual([expect.stringContaining('Refused "edit"')])
          await putAway(person)
        }

        const folder = await openKnown(person, jobs, 'a reading')
        const card = await cardIn(person)
        await person.click(card.getByRole('button', { name: 'Add evidence' }))
        await person.write('217 mm')
        await rm(join(folder, '.lock'))
        await person.press('Enter')
        await card.getByText('what was written stays here to be copied').waitFor()
        const field = card.getByRole('textbox', { name: 'Figure as it is printed' })
        expect(await field.inputValue()).toBe('217 mm')
        expect(await card.getByRole('button', { name: 'Keep', exact: true }).isDisabled()).toBe(true)
        await page.getByRole('region', { name: 'Notices' }).getByText('217 mm').waitFor()
        await person.click(card.getByRole('button', { name: 'Cancel' }))
        await field.waitFor({ state: 'detached' })
        expect(refusals()).toEqual([expect.stringContaining('Refused "edit"')])
      })
    })
  })
})
