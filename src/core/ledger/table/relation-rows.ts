import { namesInRelation } from '../../formula/relation-text.ts'
import { labelBesideId } from '../../job/ids/label.ts'
import { meanTheSame } from '../../job/model/conventions.ts'
import type { Relation } from '../../job/model/types.ts'
import { type Closure, closureOf } from '../../prove/relations.ts'
import { inWords, reason } from '../../words/core-words.ts'
import type { Assessment } from '../assessment/assessment.ts'
import { displayFactor, writeMeasured } from '../units/display-units.ts'
import { sameLook } from '../units/look.ts'
import type { TableRelation } from './table.ts'

/** The relations of a table, and the assessment that they were closed in. */
export interface ClosedRelations {
  assessment: Assessment
  relations: ReadonlyMap<Relation, TableRelation>
}

/**
 * The relations' part of the table, in the units of their kinds.
 * @param before those whose dimensions stand as they did are taken from it
 */
export function relationRows(assessment: Assessment, before?: ClosedRelations): Map<Relation, TableRelation> {
  return new Map(
    assessment.job.relations.map((relation) => {
      const was = before?.relations.get(relation)
      const stands = before !== undefined && standsAs(relation, before.assessment, assessment)
      return [relation, was !== undefined && stands ? was : relationRow(relation, assessment)]
    }),
  )
}

function standsAs({ text }: Relation, before: Assessment, now: Assessment): boolean {
  if (!sameLook(before, now) || before.finest !== now.finest || !meanTheSame(before.job, now.job))
    return false
  return namesInRelation(text).every((name) => before.dimensions.get(name) === now.dimensions.get(name))
}

/** Of exact figures as a figure, otherwise a decimal to what it is uncertain by; without sign. */
function missesByOf({ kind, misclosure, U, exact }: Closure, assessment: Assessment): string {
  const { unit, figuresAs, finest } = assessment
  return writeMeasured(Math.abs(misclosure), exact ? 0 : U, { kind, unit, figuresAs, finest, feetFrom: null })
}

/** A relation as the table has it, in an assessment. */
export function relationRow(relation: Relation, assessment: Assessment): TableRelation {
  const { id, text } = relation
  const label = labelBesideId(relation)
  const named = { id, ...(label === undefined ? {} : { label }), text }
  const closure = closureOf(relation, assessment)
  if ('problem' in closure) {
    const problemReason = reason('relation.not-checked', { problem: closure.problem })
    const nothing = { kind: 'length', misclosure: 0, missesBy: '', u: 0, U: 0, w: 0, holds: false } as const
    return { ...named, ...nothing, problem: inWords(problemReason), problemReason }
  }
  const { kind, misclosure, u, U, w, holds } = closure
  const factor = displayFactor(kind, assessment.unit)
  const missesBy = missesByOf(closure, assessment)
  return { ...named, kind, misclosure: misclosure * factor, missesBy, u: u * factor, U: U * factor, w, holds }
}
