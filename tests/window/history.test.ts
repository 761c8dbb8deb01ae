import { describe, expect, it } from 'vitest'
import { withJob } from '../main/fixtures/history-folder.ts'
import { workshopJob } from '../main/fixtures/workshop-job.ts'
import { inEachHost } from './harness/at-the-bench.ts'
import { violations } from './harness/violations.ts'
import { desk, sheetReady } from './steps.ts'

const LONG = `Worn on the left; ${'the rivets of the rim stand proud there, '.repeat(8)}as far as the hub.`

describe('The history of a note', () => {
  inEachHost((session) => {
    it('is on its card, with a long text whole when it is asked for by a key', async () => {
      const note = { id: 'N1', sheet: 'S1', outline: [], text: 'Worn on the left.' }
      const { folder } = await workshopJob((job) => ({ ...job, notes: [note] }))
      await withJob(folder, (made) => made.edit({ do: 'change-note', id: 'N1', set: { text: LONG } }, 'AR'))
      await session({ opens: { folder } }, async ({ page, person }) => {
        await sheetReady(page)
        await person.station('Sheet')
        await person.click(person.button(/^Notes \(1\)$/))
        await person.click(page.getByRole('list', { name: 'Notes' }).getByRole('button').first())
        const card = page.getByRole('article', { name: 'Note 1' })
        await card.getByRole('button', { name: 'History', exact: true }).press('Enter')
        await card.getByText(/^changed note N1: text “Worn on the left\.” → “Worn .*…$/).waitFor()
        expect(await card.getByText(/as far as the hub\.”$/).count()).toBe(0)
        await card.getByRole('button', { name: 'Show it whole' }).press('Enter')
        await card.getByText(`text “Worn on the left.” → “${LONG}”`).waitFor()
        expect(await violations(page, 'the history of a note')).toEqual([])
        await card.getByRole('button', { name: 'Show less' }).press('Enter')
        await card.getByRole('button', { name: 'Show it whole' }).waitFor()
        await desk(page).getByText('A. Rivet').first().waitFor()
      })
    })
  })
})
