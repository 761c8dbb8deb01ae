import { basisWord } from '../../core/job/ids/basis-word.ts'
import type { TableRow } from '../../core/ledger/table/table.ts'
import { statusWord } from '../../core/words/status-word.ts'

const folded = (text: string): string => text.toLocaleLowerCase('en-GB').replaceAll('−', '-')

/** Whether a row has every word that is looked for, in its name, label, figure, basis or status. */
export function rowHas(row: TableRow, sought: string): boolean {
  const words = folded(sought).split(/\s+/).filter(Boolean)
  if (words.length === 0) return true
  const text = folded(
    [
      row.name,
      row.label,
      row.written,
      row.near ?? '',
      row.basis === null ? '' : basisWord(row.basis),
      statusWord(row.status),
    ].join('\n'),
  )
  return words.every((word) => text.includes(word))
}
