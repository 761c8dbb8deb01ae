import { expect, test } from 'vitest'
import { tableMarkdown } from '../../../../src/core/handoff/table/table-markdown.ts'
import { aRow, aTable, withCautionsOfViews } from './a-table.ts'

test('a table in Markdown has every row in one table, then views, relations and cautions', () => {
  const lines = tableMarkdown(aTable()).split('\n')
  expect(lines[0]).toBe('# Drum of the chain ferry')
  expect(lines).toContain(
    '| `drum_length` | Drum, length | 14 3/8" (tolerance ±1/32) | printed | agreed | 1 | The printed figure governs. |',
  )
  for (const heading of ['## Views', '## Relations', '## Cautions']) expect(lines).toContain(heading)
  expect(lines).toContain('- Values scaled from a print are estimates.')
})

test('nothing that a label says is taken for markup or ends its cell', () => {
  const label = 'a|b <script> *c* `d` [e](f) g\\h & i\n# j'
  const row = tableMarkdown(aTable({ rows: [aRow({ label })] }))
    .split('\n')
    .find((line) => line.startsWith('| `drum'))
  expect(row).toContain('a\\|b &lt;script&gt; \\*c\\* \\`d\\` \\[e\\](f) g\\\\h &amp; i # j')
  expect(row?.match(/(?<!\\)\|/g)).toHaveLength(8)
})

test('what is wrong with a view is said once, with the view', () => {
  const table = aTable()
  const lines = tableMarkdown(withCautionsOfViews(table)).split('\n')
  expect(lines.filter((line) => line.includes('does not fit the others'))).toHaveLength(1)
  expect(lines.at(-2)).toBe('- Values scaled from a print are estimates.')
})
