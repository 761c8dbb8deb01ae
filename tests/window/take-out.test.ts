import { readFile } from 'node:fs/promises'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { describe, expect, it } from 'vitest'
import { tableTabbed } from '../../src/core/handoff/table/table-tabbed.ts'
import type { Table } from '../../src/core/ledger/table/table.ts'
import { workshopJob } from '../main/fixtures/workshop-job.ts'
import { inHost } from './harness/at-the-bench.ts'
import { localLauncher } from './harness/local-launcher.ts'
import { tableByCommand } from './harness/program.ts'
import { tableSettled } from './harness/table-in-window.ts'
import { oneOf } from './steps.ts'

/** The words of each page of a PDF, and its size in points. */
async function pagesOf(pdf: Uint8Array) {
  const document = await getDocument({ data: new Uint8Array(pdf) }).promise
  const pages = Array.from({ length: document.numPages }, async (_, k) => {
    const page = await document.getPage(k + 1)
    const { items } = await page.getTextContent()
    const words = items.flatMap((item) => ('str' in item ? [item.str] : [])).join(' ')
    return { size: page.view.slice(2), words: words.replace(/\s+/g, ' ') }
  })
  return Promise.all(pages)
}

/** Whether a text is there, wherever its lines were broken. */
const withoutSpaces = (text: string): string => text.replace(/\s+/g, '')

const ROWS = 90

describe('The table is taken out of the window', () => {
  inHost(localLauncher(), (session) => {
    it('as the command line has it: a file to the byte, a copy for a spreadsheet, and every row on paper', async () => {
      const { folder } = await workshopJob((job) => ({
        ...job,
        dimensions: [
          ...job.dimensions,
          ...Array.from({ length: ROWS }, (_, k) => ({
            name: `hole_${k}`,
            label: `Flange, hole ${k}, "drilled"`,
            kind: 'length' as const,
            evidence: [{ id: 'p1', basis: 'printed' as const, text: `${k} 3/8"` }],
          })),
        ],
      }))
      await session({ opens: { folder }, scheme: 'dark' }, async ({ page, person }) => {
        await tableSettled(page)
        const take = async (way: string): Promise<void> => {
          await person.click(person.button(/^Take the table out/))
          await person.click(page.getByRole('menuitem', { name: way }))
        }
        for (const figures of ['fractions', 'decimals']) {
          await person.click(
            oneOf(page, 'Figures in fractions or decimals', figures === 'fractions' ? '3/8' : '.375'),
          )
          await tableSettled(page)
          const downloaded = page.waitForEvent('download')
          await take('CSV file…')
          const file = await downloaded
          expect(file.suggestedFilename()).toBe('Drum-of-the-chain-ferry-table.csv')
          expect((await readFile(await file.path())).toString()).toBe(
            await tableByCommand(folder, '--format', 'csv', '--figures', figures),
          )
        }

        // Of the rows that are shown, in decimals as they are looked at.
        await page.getByRole('searchbox', { name: 'Find dimensions' }).fill('drum')
        await take('Copy the rows')
        await page.getByText('2 of 92 rows are copied', { exact: false }).waitFor()
        await page.context().grantPermissions(['clipboard-read'])
        const copied = await page.evaluate(() => navigator.clipboard.readText())
        const table = JSON.parse(
          await tableByCommand(folder, '--format', 'json', '--figures', 'decimals'),
        ) as Table
        expect(copied).toBe(tableTabbed(table, table.rows.slice(0, 2)))

        const pages = await pagesOf(await page.pdf({ preferCSSPageSize: true }))
        // A4 on its side, ISO 216, in points.
        for (const { size } of pages) {
          expect(size[0]).toBeCloseTo((297 / 25.4) * 72, -0.5)
          expect(size[1]).toBeCloseTo((210 / 25.4) * 72, -0.5)
        }
        expect(pages.length).toBeGreaterThan(2)
        const all = withoutSpaces(pages.map(({ words }) => words).join(' '))
        for (const { label, name, why } of table.rows) {
          for (const text of [label, name, why]) expect(all).toContain(withoutSpaces(text))
        }
        for (const caution of table.cautions) expect(all).toContain(withoutSpaces(caution))
        expect(all).toContain(withoutSpaces('How the views are calibrated'))
        // Each page that has rows says again what stands in its columns.
        for (const { words } of pages.filter(({ words }) => words.includes('hole_'))) {
          expect(words).toContain('figure ± U (95 %)')
        }
        // What is for the screen alone is not printed.
        expect(all).not.toContain(withoutSpaces('Whole sheet'))
      })
    })
  })
})
