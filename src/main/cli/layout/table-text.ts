import stringWidth from 'string-width'
import { statedValue } from '../../../core/handoff/table/stated-value.ts'
import { statusText } from '../../../core/handoff/table/status-text.ts'
import {
  calibrationSentence,
  cautionsBesideViews,
  numberedViews,
  relationLine,
  viewName,
  viewRemarks,
} from '../../../core/handoff/table/view-lines.ts'
import { basisWord } from '../../../core/job/ids/basis-word.ts'
import type { Table } from '../../../core/ledger/table/table.ts'
import { plainText } from '../../../core/words/plain-text.ts'
import { wrapText } from './wrap-text.ts'

const GAP = '  '
/** Narrower than this the reason goes on lines of its own under the row. */
const NARROWEST_REASON = 46
const NARROWEST_PAGE = 40

const padding = (text: string, width: number): string => ' '.repeat(Math.max(0, width - stringWidth(text)))

const HEADINGS = ['name', 'figure ± U (95 %)', 'basis', 'status', 'off', 'why'] as const

function rowLines(table: Table, width: number): string[] {
  const cells = table.rows.map((row) => [
    row.name,
    statedValue(row, table.unit),
    row.basis === null ? '—' : basisWord(row.basis),
    statusText(row),
    String(row.count),
  ])
  const widths = HEADINGS.slice(0, -1).map((heading, column) =>
    Math.max(stringWidth(heading), ...cells.map((row) => stringWidth(row[column] ?? ''))),
  )
  const lay = (row: readonly string[]): string =>
    row
      .map((text, column) =>
        column === 4 ? padding(text, widths[column] ?? 0) + text : text + padding(text, widths[column] ?? 0),
      )
      .join(GAP)
  const left = widths.reduce((sum, columnWidth) => sum + columnWidth + GAP.length, 0)
  const beside = width - left >= NARROWEST_REASON
  const indent = beside ? left : 4

  const heading = lay(HEADINGS.slice(0, -1))
  const lines = table.rows.flatMap((row, index) => {
    const start = lay(cells[index] ?? [])
    const [first = '', ...rest] = wrapText(plainText(row.why), width - indent)
    const margin = ' '.repeat(indent)
    return [
      ...(beside ? [`${start}${GAP}${first}`.trimEnd()] : [start.trimEnd(), `${margin}${first}`.trimEnd()]),
      ...rest.map((line) => margin + line),
    ]
  })
  const longest = [heading, ...lines].reduce((most, line) => Math.max(most, stringWidth(line)), 0)
  return [beside ? `${heading}${GAP}why` : heading.trimEnd(), '─'.repeat(Math.min(width, longest)), ...lines]
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
    const relations = table.relations.flatMap((relation) =>
      listed(relationLine(relation, table.unit), [], page),
    )
    sections.push(['Relations', ...relations])
  }
  const numbered = numberedViews(table)
  if (numbered.length > 0) {
    const numbers = numbered.flatMap((view) => listed(`${view.name}: ${view.numbers}`, [], page))
    sections.push(['The numbers behind the views', ...numbers])
  }
  const cautions = cautionsBesideViews(table)
  if (cautions.length > 0) {
    const lines = cautions.flatMap((caution) =>
      wrapText(plainText(caution), page - 2).map((line, index) => (index === 0 ? `- ${line}` : `  ${line}`)),
    )
    sections.push(['Cautions', ...lines])
  }
  return `${sections.map((lines) => lines.join('\n')).join('\n\n')}\n`
}
