import {
  relationLine,
  relationState,
  viewName,
  viewProblems,
} from '../../../core/handoff/table/view-lines.ts'
import { isQuestion } from '../../../core/ledger/evidence/figure-remarks.ts'
import type { Table, TableEvidence, TableRow } from '../../../core/ledger/table/table.ts'
import { plainText } from '../../../core/words/plain-text.ts'

/** What somebody should look at in a table, one sentence each. */
export interface Findings {
  disputed: string[]
  /** Dimensions without a value. */
  open: string[]
  /** Printed figures that can't be read, are hard to read or are asked about, withdrawn ones left aside. */
  figures: string[]
  /** Views with a problem, figured sizes that are set aside. */
  scales: string[]
  /** Relations that do not hold. */
  unheld: string[]
  /** Relations that could not be checked, because something in them has no value. */
  unchecked: string[]
}

/** Picks out of a table what is disputed, has no value, may be wrong, is hard to read, or does not hold. */
export function tableFindings(table: Table): Findings {
  const rows = (status: string): string[] =>
    table.rows.filter((row) => row.status === status).map((row) => `${row.name}: ${plainText(row.why)}`)
  const relations = (state: ReturnType<typeof relationState>): string[] =>
    table.relations
      .filter((relation) => relationState(relation) === state)
      .map((relation) => relationLine(relation, table.unit))
  return {
    disputed: rows('disputed'),
    open: rows('open'),
    scales: table.views.flatMap((view) => viewProblems(view).map((remark) => `${viewName(view)}: ${remark}`)),
    figures: [...gaugesToSettle(table), ...table.rows.flatMap(figuresToSettle)],
    unheld: relations('does not hold'),
    unchecked: relations('not checked'),
  }
}

const figuresToSettle = (row: TableRow): string[] =>
  row.evidence.flatMap((evidence) => {
    const problem = figureProblem(evidence)
    const figure = evidence.written === '' ? '' : ` (${plainText(evidence.written)})`
    const called = evidence.label ?? `figure ${evidence.id}`
    const told = [...(problem === undefined ? [] : [problem]), ...questionsOf(evidence)]
    return told.map((one) => `${row.name}, ${called}${figure}: ${one}`)
  })

const questionsOf = ({ remarks = [], remarkReasons = [], problemReason }: TableEvidence): string[] =>
  problemReason?.code === 'evidence.withdrawn'
    ? []
    : remarks.filter((_, i) => remarkReasons[i] !== undefined && isQuestion(remarkReasons[i])).map(plainText)

/** Which table the sheet gauges of the job are of, where it does not say. */
const gaugesToSettle = ({ cautions, cautionReasons }: Table): string[] =>
  cautions.filter((_, i) => cautionReasons[i]?.code === 'caution.gauge-unsaid').map(plainText)

const figureProblem = ({ basis, problem, problemReason }: TableEvidence): string | undefined =>
  basis !== 'printed' || problem === undefined || problemReason?.code === 'evidence.withdrawn'
    ? undefined
    : plainText(problem)
