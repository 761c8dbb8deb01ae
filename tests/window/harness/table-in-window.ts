import type { Locator, Page } from 'playwright-core'
import { twoFrames } from './two-frames.ts'

/** The rows of the table, each as its cells by the heading over them. */
export type ShownRow = Record<string, string>

export const grid = (page: Page): Locator => page.getByRole('grid')

/** Waits until what is shown is worked out from everything that is kept. */
export async function tableSettled(page: Page): Promise<void> {
  await page.locator('section[aria-label="Table of dimensions"][aria-busy="false"]').waitFor()
}

interface Seen {
  headings: string[]
  /** By their number in the whole table, the head being 1. */
  rows: [number, string[]][]
  total: number
  atEnd: boolean
}

/** What can be seen of the table now, as a screen reader says it. */
const seen = (table: Locator): Promise<Seen> =>
  table.evaluate((element) => {
    const said = (cell: Element): string => {
      const copy = cell.cloneNode(true) as Element
      for (const hidden of copy.querySelectorAll('[aria-hidden="true"]')) hidden.remove()
      return (copy.textContent ?? '').trim()
    }
    // The command line has no column of the readings on the original.
    const cells = (row: Element, role: string): string[] =>
      [...row.querySelectorAll(`[role="${role}"]:not([data-column="original"])`)].map(said)
    const rows = [...element.querySelectorAll('[role="row"]')]
    const headings = rows.flatMap((row) => cells(row, 'columnheader'))
    return {
      headings,
      rows: rows
        .filter((row) => row.querySelector('[role="gridcell"]') !== null)
        .map((row): [number, string[]] => [
          Number(row.getAttribute('aria-rowindex')),
          cells(row, 'gridcell'),
        ]),
      total: Number(element.getAttribute('aria-rowcount')) - 1,
      atEnd: element.scrollTop + element.clientHeight >= element.scrollHeight - 1,
    }
  })

/** Every row of the table, read by scrolling through it with the wheel, in the order shown. */
export async function readTable(page: Page): Promise<ShownRow[]> {
  await tableSettled(page)
  const table = grid(page)
  await table.hover()
  await page.mouse.wheel(0, -1e6)
  await page.waitForFunction((element) => element?.scrollTop === 0, await table.elementHandle())
  const all = new Map<number, string[]>()
  for (;;) {
    const { headings, rows, total, atEnd } = await seen(table)
    for (const [number, cells] of rows) all.set(number, cells)
    if (atEnd) {
      if (all.size !== total) throw new Error(`The table has ${total} rows, and ${all.size} were shown.`)
      return [...all]
        .sort(([a], [b]) => a - b)
        .map(([, cells]) => Object.fromEntries(headings.map((heading, k) => [heading, cells[k] ?? ''])))
    }
    await scrollOn(page, table)
  }
}

async function scrollOn(page: Page, table: Locator): Promise<void> {
  const before = await table.evaluate((element) => element.scrollTop)
  const step = await table.evaluate((element) => Math.max(26, element.clientHeight - 52))
  await page.mouse.wheel(0, step)
  const element = await table.elementHandle()
  await page.waitForFunction(([box, was]) => (box as Element).scrollTop !== was, [element, before] as const)
  // Rows come on screen with the frame after the one that scrolled.
  await twoFrames(page)
}

/** Scrolls down to the row of a dimension. */
export async function bringRow(page: Page, name: string): Promise<Locator> {
  const table = grid(page)
  const cell = table.getByText(name, { exact: true })
  await table.hover()
  await page.mouse.wheel(0, -1e6)
  while ((await cell.count()) === 0) await scrollOn(page, table)
  return cell
}
