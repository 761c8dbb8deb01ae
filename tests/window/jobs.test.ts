import { cp, mkdir, readFile, rename, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { temporaryFolder } from '../main/fixtures/temporary-folder.ts'
import { drawScan, workshopJob } from '../main/fixtures/workshop-job.ts'
import { inHost } from './harness/at-the-bench.ts'
import { boxOf } from './harness/box-of.ts'
import { localLauncher } from './harness/local-launcher.ts'
import { violations } from './harness/violations.ts'
import { sheetReady } from './steps.ts'

const TITLE = 'Drum of the chain ferry'

/** A home with the drum among the jobs that are made there. */
async function aHome(): Promise<string> {
  const home = await temporaryFolder()
  await mkdir(join(home, 'jobs'))
  await cp((await workshopJob()).folder, join(home, 'jobs', 'drum'), { recursive: true })
  return home
}

/** Opens the start page anew, and keeps from it how its jobs stand until that is let go. */
async function withoutStanding(page: Page): Promise<() => void> {
  let letGo = (): void => undefined
  const held = new Promise<void>((resolve) => {
    letGo = resolve
  })
  await page.route('**/ask/glance', async (route) => {
    await held
    await route.continue()
  })
  await page.reload()
  return letGo
}

const frontSeen = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => {
    const picture = document.querySelector<HTMLImageElement>('.job-front img')
    return picture?.complete === true && picture.naturalWidth > 0
  })

describe('The start page', () => {
  inHost(localLauncher(), (session) => {
    it('shows every job with its first sheet and how it stands; one that was moved is found again', async () => {
      const home = await aHome()
      await session({ opens: 'start', home }, async ({ page, person }) => {
        const jobs = page.getByRole('list', { name: 'Jobs' })
        await jobs.getByText(/^1 sheet, 2 dimensions/).waitFor()
        await frontSeen(page)
        expect(await violations(page, 'start page with jobs')).toEqual([])
        const letGo = await withoutStanding(page)
        const row = jobs.getByRole('button').first()
        await row.getByText('~/jobs/drum').waitFor()
        const before = await boxOf(row)
        letGo()
        await jobs.getByText(/^1 sheet, 2 dimensions/).waitFor()
        expect(await boxOf(row)).toEqual(before)
        await person.click(jobs.getByRole('button', { name: new RegExp(TITLE) }))
        await sheetReady(page)
        await person.click(person.button('Close this job'))
        await jobs.getByText(/^Last open/).waitFor()
        // Moved while its picture is asked for, it would rightly have none.
        await frontSeen(page)
        await mkdir(join(home, 'Works', '1911'), { recursive: true })
        await rename(join(home, 'jobs', 'drum'), join(home, 'Works', '1911', 'drum'))
        await page.reload()
        await jobs.getByText('It is no longer in ~/jobs/drum.').waitFor()
        await person.click(person.button(`Look for ${TITLE}`))
        await page
          .getByText(`The job "${TITLE}" was moved from ~/jobs/drum and found in ~/Works/1911/drum.`)
          .waitFor()
        await sheetReady(page)
      })
    })

    it('opens a job in any folder below home', async () => {
      const home = await aHome()
      await mkdir(join(home, 'Works'))
      await rename(join(home, 'jobs', 'drum'), join(home, 'Works', 'drum'))
      await session({ opens: 'start', home }, async ({ page, person }) => {
        await person.click(person.button('Open a job folder…'))
        const chooser = page.getByRole('dialog', { name: 'Open a job folder' })
        await person.click(chooser.getByRole('button', { name: 'Works' }))
        await chooser.getByText('~/Works', { exact: true }).waitFor()
        expect(await chooser.evaluate((dialog) => dialog.contains(document.activeElement))).toBe(true)
        expect(await violations(page, 'folders')).toEqual([])
        await person.click(chooser.getByRole('button', { name: 'Up' }))
        await person.click(chooser.getByRole('button', { name: 'Works' }))
        await person.click(chooser.getByRole('button', { name: /Job in drum/ }))
        await page.getByRole('heading', { name: TITLE }).waitFor()
      })
    })

    it('says why a job is not begun: nothing is written, or the name is taken', async () => {
      const home = await aHome()
      const scan = await drawScan(join(home, 'cone.png'))
      await session({ opens: 'start', home, isStranger: true }, async ({ page, person, window }) => {
        await person.hand(scan, () => person.click(person.button('Choose a scan…')))
        const name = person.field('Your name')
        expect(await name.inputValue()).toBe('')
        await person.fill(person.field('What the job is called'), 'drum')
        await person.click(person.button('Begin the job'))
        await page.getByText('Write your name: what you do is kept under it.').waitFor()
        await person.fill(name, 'A. Archivist')
        await person.click(person.button('Begin the job'))
        await page.getByText('There is a folder "drum" in ~/jobs already').waitFor()
        await person.fill(person.field('What the job is called'), 'Cone')
        await person.click(person.button('Begin the job'))
        await page.getByRole('heading', { name: 'Cone' }).waitFor()
        await person.button(/^At work.*A\. Archivist/).waitFor()
        expect((window.log as string[]).splice(0)).toHaveLength(1)
      })
    })

    it('has a job mended that does not open', async () => {
      const home = await aHome()
      const file = join(home, 'jobs', 'drum', 'job.json')
      const before = await readFile(file, 'utf8')
      await writeFile(file, '{')
      await session({ opens: 'start', home }, async ({ page, person }) => {
        await person.click(person.button('Mend drum…'))
        const asks = page.getByRole('dialog', { name: 'Mend drum?' })
        await asks.getByText(/^history\.ndjson/).waitFor()
        expect(await violations(page, 'mending')).toEqual([])
        await person.click(asks.getByRole('button', { name: /^Go on from this: history\.ndjson/ }))
        await page.getByRole('heading', { name: TITLE }).waitFor()
        await page.getByText(/^Caution: The job was mended/).waitFor()
        expect(JSON.parse(await readFile(file, 'utf8')).dimensions).toEqual(JSON.parse(before).dimensions)
      })
    })
  })
})
