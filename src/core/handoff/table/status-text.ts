import type { TableRow } from '../../ledger/table/table.ts'
import { statusWord } from '../../words/status-word.ts'

/** How a row stands in a printed table: `agreed`, or `agreed, sum out` where it is part of a sum that does not add up. */
export const statusText = ({ status, sumsOut }: TableRow): string =>
  `${statusWord(status)}${sumsOut === undefined ? '' : ', sum out'}`
