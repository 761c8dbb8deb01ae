import type { Table } from '../ledger/table.ts'
import { plainText } from './plain-text.ts'
import { relationLine, viewName, viewProblems } from './view-lines.ts'

/** What somebody must look at before a table goes to the shop, one sentence each. */
export interface Findings {
  disputed: string[]
  open: string[]
  /** Views with a problem, references that do not fit. */
  suspect: string[]
  /** Relations that do not close. */
  unclosed: string[]
}

/** Picks out of a table what is disputed, open, suspect or does not close. */
export function tableFindings(table: Table): Findings {
  const rows = (status: string): string[] =>
    table.rows.filter((row) => row.status === status).map((row) => `${row.name}: ${plainText(row.why)}`)
  return {
    disputed: rows('disputed'),
    open: rows('open'),
    suspect: table.views.flatMap((view) =>
      viewProblems(view).map((remark) => `${viewName(view)}: ${remark}`),
    ),
    unclosed: table.relations.filter((relation) => !relation.holds).map(relationLine),
  }
}
