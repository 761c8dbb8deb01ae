import { readdir, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { Table, TableRow } from '../../src/core/ledger/table/table.ts'
import { writeHolder } from '../../src/main/services/job-folder/lock/lock-holder.ts'
import { holderElsewhere } from '../main/fixtures/lock-file.ts'
import { temporaryFolder } from '../main/fixtures/temporary-folder.ts'
import { workshopJob } from '../main/fixtures/workshop-job.ts'
import { drawPlate, STATED_SCALE, trueDistance } from './fixtures/plate.ts'
import { inEachHost, inHost } from './harness/at-the-bench.ts'
import { pressBy } from './harness/by-keyboard.ts'
import { whyNoDesktop } from './harness/electron-launcher.ts'
import { localLauncher } from './harness/local-launcher.ts'
import type { Person } from './harness/person.ts'
import { startProgram, tableByCommand } from './harness/program.ts'
import { commandRows } from './harness/table-by-command.ts'
import { grid, readTable, tableSettled } from './harness/table-in-window.ts'
import { desk, knownSize, nameOutlined, nameWholeSheet, newDistance, sheetReady } from './steps.ts'

const MM_PER_INCH = 25.4
const LABEL = 'Between the inner punches'
const NAME = 'between_the_inner_punches'

const jobsIn = (home: string): string => join(home, 'jobs')

const sampleIn = (home: string): string => join(jobsIn(home), 'Deck ventilator (sample)')

async function rowOf(folder: string, name: string): Promise<TableRow> {
  const table = JSON.parse(await tableByCommand(folder)) as Table
  const row = table.rows.find((one) => one.name === name)
  if (row === undefined) throw new Error(`The table has no row ${name}.`)
  return row
}

/** The plate lies on the bench: names its view, gives it a scale of two sizes, measures a third. */
async function measureThePlate(person: Person, nameView: typeof nameWholeSheet): Promise<void> {
  await person.station('Scale')
  await nameView(person, 'Foundation plate', STATED_SCALE)
  await knownSize(person, ['origin', 'along'], `${trueDistance('origin', 'along')} mm`)
  await knownSize(person, ['origin', 'across'], `${trueDistance('origin', 'across')} mm`)
  await person.station('Pick')
  await newDistance(person, ['near', 'far'], LABEL)
}

function say(story: string, { clicks, keys }: Person, started: number): void {
  const seconds = ((performance.now() - started) / 1000).toFixed(0)
  process.stdout.write(`${story}: ${clicks} clicks, ${keys} keys; driven in ${seconds} s\n`)
}

describe('Somebody who measures a plate from its drawing', () => {
  const why = whyNoDesktop()
  if (why !== undefined) {
    process.stdout.write(`Skipped in the desktop window: ${why}\n`)
    it.skip(`is not driven in the desktop window: ${why}`)
  }

  inEachHost((session) => {
    it('brings it into the sample as a second sheet, and the true size lies within U of what the table says', async () => {
      await session({ opens: 'sample' }, async ({ page, person, home }) => {
        const started = performance.now()
        const scan = await drawPlate(join(home, 'foundation-plate.png'))
        await person.hand(scan, () => person.click(person.button('Bring in a scan…')))
        await page.getByRole('radio', { name: /2 foundation-plate/i }).waitFor()
        await sheetReady(page)
        await measureThePlate(person, nameOutlined)
        say('The plate in the sample job', person, started)

        const row = await rowOf(sampleIn(home), NAME)
        expect(row.value).not.toBeNull()
        expect(Math.abs((row.value ?? 0) - trueDistance('near', 'far') / MM_PER_INCH)).toBeLessThan(row.U)
        expect(row.U * MM_PER_INCH).toBeLessThan(0.02 * trueDistance('near', 'far'))
        expect(await readTable(page)).toEqual(await commandRows(sampleIn(home)))
      })
    })

    it('does the same from an empty start', async () => {
      await session({ opens: 'start' }, async ({ page, person, home }) => {
        const started = performance.now()
        const scan = await drawPlate(join(home, 'foundation-plate.png'))
        await person.hand(scan, () => person.click(person.button('Choose a scan…')))
        await person.click(page.getByText('Millimetres'))
        await person.fill(person.field('Your name'), 'A. Rivet')
        await person.click(person.button('Begin the job'))
        await sheetReady(page)
        await measureThePlate(person, nameWholeSheet)
        say('The plate from an empty start', person, started)

        const [name = ''] = await readdir(jobsIn(home))
        const folder = join(jobsIn(home), name)
        const row = await rowOf(folder, NAME)
        expect(row.value).not.toBeNull()
        expect(Math.abs((row.value ?? 0) - trueDistance('near', 'far'))).toBeLessThan(row.U)
        const shown = await readTable(page)
        expect(shown).toEqual(await commandRows(folder))
        expect(shown.map((cells) => cells['figure ± U (95 %)'])).toEqual([
          expect.stringMatching(/^21\d.* ± /),
        ])
        await expect.poll(() => desk(page).textContent()).toContain(LABEL)
      })
    })

    it('finds a job that another process holds open for looking only, and is told who holds it', async () => {
      const { folder } = await workshopJob()
      const holder = await startProgram({ folder }, await temporaryFolder())
      try {
        await session({ opens: { folder } }, async ({ page, person }) => {
          const banner = page.getByRole('status').filter({ hasText: 'read-only' })
          await expect.poll(() => banner.textContent()).toContain(String(holder.pid))
          expect(await readTable(page)).toEqual(await commandRows(folder))
          await expect(page.getByText('Read-only', { exact: true }).isVisible()).resolves.toBe(true)

          await expect(person.button('Bring in a scan…').isDisabled()).resolves.toBe(true)
          await person.station('Scale')
          await expect(person.button('Name a view').isDisabled()).resolves.toBe(true)
          await person.station('Pick')
          await expect(page.getByRole('radio', { name: 'Between points' }).isDisabled()).resolves.toBe(true)
          await grid(page).getByText('drum_length').first().dblclick()
          await expect(grid(page).getByRole('textbox').count()).resolves.toBe(0)
          await person.press('Control+z')
          expect(await readTable(page)).toEqual(await commandRows(folder))
        })
      } finally {
        await holder.end()
      }
    })

    it('takes over a job that nobody can give back, by the keyboard; takes back and makes again what was done in it', async () => {
      const { folder } = await workshopJob()
      await writeFile(join(folder, '.lock'), writeHolder(holderElsewhere()))
      await session({ opens: { folder } }, async ({ page, person }) => {
        const banner = page.getByRole('status').filter({ hasText: 'read-only' })
        await pressBy(person, banner.getByRole('button', { name: 'Take over…' }))
        const dialog = page.getByRole('dialog', { name: 'Take the job over?' })
        expect(await dialog.textContent()).toMatch(
          /It is open for writing by rivet on bench-2\.invalid \(process \d+\) since .+ what they do after this is not kept here/,
        )
        await pressBy(person, dialog.getByRole('button', { name: 'Cancel' }))
        await dialog.waitFor({ state: 'detached' })
        await expect(page.getByText('Read-only', { exact: true }).isVisible()).resolves.toBe(true)
        await pressBy(person, banner.getByRole('button', { name: 'Take over…' }))
        await pressBy(person, dialog.getByRole('button', { name: 'Take it over' }))
        await dialog.waitFor({ state: 'detached' })
        await banner.waitFor({ state: 'detached' })
        const notice = page.getByRole('region', { name: 'Notices' })
        await expect.poll(() => notice.textContent()).toContain('was taken over, as was asked')
        await person.click(person.button('Dismiss this notice'))

        const labelled = () => grid(page).getByText('Length of the drum', { exact: true })
        await expect(person.button('Nothing to undo').isDisabled()).resolves.toBe(true)
        await expect(page.getByText('Nothing changed yet').isVisible()).resolves.toBe(true)
        await grid(page).getByText('Drum, length', { exact: true }).dblclick()
        await person.write('Length of the drum')
        await person.press('Enter')
        await labelled().waitFor()
        await expect(page.getByText(/^Saved \d\d:\d\d$/).isVisible()).resolves.toBe(true)
        expect(await readTable(page)).toEqual(await commandRows(folder))

        await person.press('Control+z')
        await labelled().waitFor({ state: 'detached' })
        await person.click(person.button(/^Redo .*drum_length/))
        await labelled().waitFor()
        await person.click(person.button(/^Undo .*drum_length/))
        await labelled().waitFor({ state: 'detached' })
        await person.press('Control+Shift+z')
        await labelled().waitFor()
        expect(await readTable(page)).toEqual(await commandRows(folder))
      })
    })

    it('finds everything that was shown as saved after the program was killed, and is told of it', async () => {
      const { folder } = await workshopJob()
      await session({ opens: { folder } }, async ({ page, person, window }) => {
        await grid(page).getByText('Drum, length', { exact: true }).dblclick()
        await person.write('Length of the drum')
        await person.press('Enter')
        await page.getByText(/^Saved \d\d:\d\d$/).waitFor()
        await window.kill()
      })
      await session({ opens: { folder } }, async ({ page }) => {
        await tableSettled(page)
        await grid(page).getByText('Length of the drum', { exact: true }).waitFor()
        const notices = page.getByRole('region', { name: 'Notices' })
        await expect
          .poll(() => notices.textContent())
          .toContain('its lock was taken over and its acknowledged edits are here')
        expect(await readTable(page)).toEqual(await commandRows(folder))
      })
    })
  })

  inHost(localLauncher(), (session) => {
    it('is told when the workbench no longer answers', async () => {
      await session({ opens: 'sample' }, async ({ page, window }) => {
        await tableSettled(page)
        await window.kill()
        await page.getByText('The workbench no longer answers').first().waitFor()
      })
    })
  })
})
