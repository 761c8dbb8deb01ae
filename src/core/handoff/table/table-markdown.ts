import { basisWord } from '../../job/ids/basis-word.ts'
import type { Table } from '../../ledger/table/table.ts'
import { plainText } from '../../words/plain-text.ts'
import { statedValue } from './stated-value.ts'
import { statusText } from './status-text.ts'
import {
  calibrationSentence,
  cautionsBesideViews,
  numberedViews,
  relationLine,
  viewName,
  viewRemarks,
} from './view-lines.ts'

/** Text as itself: no character of it is taken for markup, and none ends a table's cell. */
const literal = (text: string): string =>
  plainText(text)
    .replace(/[\\`*_[\]|~]/g, '\\$&')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')

const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`

/**
 * The table as text in GitHub-flavoured Markdown: rows, views, relations, cautions. Values are rounded to what they
 * are uncertain by.
 */
export function tableMarkdown(table: Table): string {
  const unit = table.unit === 'in' ? 'inches' : 'millimetres'
  const lines = [
    `# ${literal(table.job)}`,
    '',
    `Lengths in ${unit}; U is the expanded uncertainty at 95 %.`,
    '',
    row(['Name', 'What', 'Figure ± U', 'Basis', 'Status', 'Off', 'Why']),
    row(['---', '---', '---', '---', '---', '---:', '---']),
    ...table.rows.map((entry) =>
      row([
        `\`${entry.name}\``,
        literal(entry.label),
        literal(statedValue(entry, table.unit)),
        entry.basis === null ? '—' : basisWord(entry.basis),
        statusText(entry),
        String(entry.count),
        literal(entry.why),
      ]),
    ),
  ]
  if (table.views.length > 0) {
    lines.push('', '## Views', '')
    for (const view of table.views) {
      lines.push(`- **${literal(viewName(view))}**: ${literal(calibrationSentence(view, table.unit))}`)
      for (const remark of viewRemarks(view)) lines.push(`  - ${literal(remark)}`)
    }
  }
  if (table.relations.length > 0) {
    lines.push('', '## Relations', '')
    for (const relation of table.relations) lines.push(`- ${literal(relationLine(relation, table.unit))}`)
  }
  const numbered = numberedViews(table)
  if (numbered.length > 0) {
    lines.push('', '## The numbers behind the views', '')
    for (const { name, numbers } of numbered) lines.push(`- ${literal(name)}: ${literal(numbers)}`)
  }
  const cautions = cautionsBesideViews(table)
  if (cautions.length > 0) {
    lines.push('', '## Cautions', '', ...cautions.map((caution) => `- ${literal(caution)}`))
  }
  return `${lines.join('\n')}\n`
}
