import type { Table } from '../ledger/table.ts'
import { displayWidth, padEnd, padStart } from './display-width.ts'
import { plainText } from './plain-text.ts'
import { statedValue } from './stated-value.ts'
import { calibrationSentence, relationLine, viewName, viewRemarks } from './view-lines.ts'
import { wrapText } from './wrap-text.ts'

const GAP = '  '
/** Narrower than this the reason goes on lines of its own under the row. */
const NARROWEST_REASON = 28
const NARROWEST_PAGE = 40

const HEADINGS = ['name', 'figure ± U (95 %)', 'basis', 'status', 'no.', 'why'] as const

function rowLines(table: Table, width: number): string[] {
  const cells = table.rows.map((row) => [
    row.name,
    statedValue(row, table.unit),
    row.basis ?? '—',
    row.status,
    String(row.count),
  ])
  const widths = HEADINGS.slice(0, -1).map((heading, column) =>
    Math.max(displayWidth(heading), ...cells.map((row) => displayWidth(row[column] ?? ''))),
  )
  const lay = (row: readonly string[]): string =>
    row
      .map((text, column) =>
        column === 4 ? padStart(text, widths[column] ?? 0) : padEnd(text, widths[column] ?? 0),
      )
      .join(GAP)
  const left = widths.reduce((sum, columnWidth) => sum + columnWidth + GAP.length, 0)
  const beside = width - left >= NARROWEST_REASON
  const indent = beside ? left : 4

  const lines = [beside ? `${lay(HEADINGS.slice(0, -1))}${GAP}why` : lay(HEADINGS.slice(0, -1)).trimEnd()]
  lines.push('─'.repeat(Math.min(width, beside ? width : displayWidth(lines[0] ?? ''))))
  table.rows.forEach((row, index) => {
    const start = lay(cells[index] ?? [])
    const reason = wrapText(plainText(row.why), width - indent)
    if (beside) lines.push(`${start}${GAP}${reason[0] ?? ''}`.trimEnd())
    else lines.push(start.trimEnd(), `${' '.repeat(indent)}${reason[0] ?? ''}`.trimEnd())
    for (const line of reason.slice(1)) lines.push(' '.repeat(indent) + line)
  })
  return lines
}

function listed(sentence: string, remarks: readonly string[], width: number): string[] {
  const [first = '', ...rest] = wrapText(sentence, width - 4)
  return [
    first,
    ...rest.map((line) => `    ${line}`),
    ...remarks.flatMap((remark) =>
      wrapText(remark, width - 4).map((line, index) => (index === 0 ? `  ! ${line}` : `    ${line}`)),
    ),
  ]
}

/**
 * The table for a terminal: rows in columns, then views, relations and cautions.
 * @param width columns of the terminal; the reason of each row is wrapped to it
 */
export function tableText(table: Table, width = 100): string {
  const page = Math.max(NARROWEST_PAGE, Math.floor(width))
  const sections = [
    [plainText(table.job), `lengths in ${table.unit === 'in' ? 'inches' : 'millimetres'}; U at 95 %`],
    rowLines(table, page),
  ]
  if (table.views.length > 0) {
    const views = table.views.flatMap((view) =>
      listed(`${viewName(view)}: ${calibrationSentence(view, table.unit)}`, viewRemarks(view), page),
    )
    sections.push(['Views', ...views])
  }
  if (table.relations.length > 0) {
    const relations = table.relations.flatMap((relation) => listed(relationLine(relation), [], page))
    sections.push(['Relations', ...relations])
  }
  if (table.cautions.length > 0) {
    const cautions = table.cautions.flatMap((caution) =>
      wrapText(plainText(caution), page - 2).map((line, index) => (index === 0 ? `- ${line}` : `  ${line}`)),
    )
    sections.push(['Cautions', ...cautions])
  }
  return `${sections.map((lines) => lines.join('\n')).join('\n\n')}\n`
}
