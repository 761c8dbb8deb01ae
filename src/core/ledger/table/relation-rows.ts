import { labelBesideId } from '../../job/ids/label.ts'
import { closureOf } from '../../prove/relations.ts'
import { inWords, reason } from '../../words/core-words.ts'
import type { Assessment } from '../assessment/assessment.ts'
import { displayFactor } from '../units/display-units.ts'
import type { TableRelation } from './table.ts'

/** The relations' part of the table, in the units of their kinds. */
export function relationRows(assessment: Assessment): TableRelation[] {
  return assessment.job.relations.map((relation) => {
    const { id, text } = relation
    const label = labelBesideId(relation)
    const named = { id, ...(label === undefined ? {} : { label }), text }
    const closure = closureOf(relation, assessment)
    if ('problem' in closure) {
      const problemReason = reason('relation.not-checked', { problem: closure.problem })
      const nothing = { misclosure: 0, u: 0, w: 0, holds: false }
      return { ...named, ...nothing, problem: inWords(problemReason), problemReason }
    }
    const { kind, misclosure, u, w, holds } = closure
    const factor = displayFactor(kind, assessment.unit)
    return { ...named, misclosure: misclosure * factor, u: u * factor, w, holds }
  })
}
