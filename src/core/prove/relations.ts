import type { Formula } from '../formula/formula.ts'
import { UNITS_OF_KIND } from '../formula/formula-units.ts'
import { parseRelation } from '../formula/relation-text.ts'

import type { Job } from '../job/model/types.ts'
import type { Assessment } from '../ledger/assessment/assessment.ts'
import type { TableRelation } from '../ledger/table/table.ts'
import { displayFactor } from '../ledger/units/display-units.ts'
import { angleInRadians } from '../quantity/angle.ts'
import { NotationError } from '../quantity/notation/notation-error.ts'
import { parseAngle } from '../quantity/parse/parse-angle.ts'
import { parseArea } from '../quantity/parse/parse-area.ts'
import { parseLength } from '../quantity/parse/parse-length.ts'
import type { QuantityKind } from '../quantity/quantity-kind.ts'

import { expand } from '../uncertainty/coverage.ts'
import { FIRST_ORDER } from '../uncertainty/first-order.ts'
import { BEYOND_DOUBT } from '../uncertainty/normalised-error.ts'
import { measured, propagate, type Uncertain } from '../uncertainty/uncertain.ts'

/**
 * Misclosure of each relation: left less right, with the correlations of what stands in it.
 * Figures count as ± half their last graduation or their tolerance. It holds when the misclosure is within U at 95 %.
 */
export function relationRows(assessment: Assessment): TableRelation[] {
  return assessment.job.relations.map((relation) => {
    const base = { id: relation.id, text: relation.text }
    const checked = check(relation.text, relation.u, assessment)
    return typeof checked === 'string'
      ? { ...base, misclosure: 0, u: 0, w: 0, holds: false, problem: `Not checked: ${checked}` }
      : { ...base, ...checked }
  })
}

type Checked = Pick<TableRelation, 'misclosure' | 'u' | 'w' | 'holds'>

/** The closure of a relation, or why it can't be checked. */
function check(text: string, u: string | undefined, assessment: Assessment): Checked | string {
  const { job, unit } = assessment
  const { left, right } = parseRelation(text)
  const compared = (name: string): Uncertain | null =>
    assessment.dimensions.get(name)?.decision.compared ?? null
  const missing = [...new Set([...left.names, ...right.names])].filter((name) => compared(name) === null)
  if (missing.length > 0) return `${missing.join(' and ')} ${missing.length > 1 ? 'have' : 'has'} no value.`
  const kind = kindOf(left, assessment)
  const slack = slackOf(u, kind, job)
  if (typeof slack === 'string') return slack
  const value = (name: string): Uncertain => compared(name) as Uncertain
  const [a, b] = [left.value(value, FIRST_ORDER), right.value(value, FIRST_ORDER)]
  const misclosure = propagate(a.value - b.value, [a, b, slack], [1, -1, 1])
  const expanded = expand(misclosure)
  if (!Number.isFinite(misclosure.value) || !Number.isFinite(expanded.u)) {
    return 'its formulas have no value for these dimensions.'
  }
  const rounding = 1e-9 * Math.max(Math.abs(a.value), Math.abs(b.value))
  const m = Math.abs(misclosure.value) <= rounding ? 0 : misclosure.value
  const factor = displayFactor(kind, unit)
  return {
    misclosure: m * factor,
    u: expanded.u * factor,
    w: normalised(m, expanded.u),
    holds: Math.abs(m) <= expanded.U,
  }
}

function normalised(m: number, u: number): number {
  if (m === 0) return 0
  if (u === 0) return Math.sign(m) * BEYOND_DOUBT
  return Math.max(-BEYOND_DOUBT, Math.min(m / u, BEYOND_DOUBT))
}

/** What the relation may miss by, in the units of its kind; words when it is not written so. */
function slackOf(text: string | undefined, kind: QuantityKind, job: Job): Uncertain | string {
  if (text === undefined) return measured(0, 0, '')
  try {
    return measured(0, readSlack(text, kind, job), 'what the relation may miss by')
  } catch (error) {
    if (error instanceof NotationError) return `what it may miss by is not of its kind. ${error.message}`
    throw error
  }
}

function readSlack(text: string, kind: QuantityKind, job: Job): number {
  switch (kind) {
    case 'length':
      return Number(parseLength(text, { unit: job.unit }).mm)
    case 'angle':
      return angleInRadians(parseAngle(text))
    case 'area':
      return Number(parseArea(text).mm2)
    case 'count':
      throw new NotationError(text, 0, 'Counts and ratios either agree or do not: leave it out.')
  }
}

function kindOf(side: Formula, { dimensions }: Assessment): QuantityKind {
  const units = side.units((name) => UNITS_OF_KIND[dimensions.get(name)?.dimension.kind ?? 'count'])
  if (units.length === 1) return 'length'
  if (units.length === 2) return 'area'
  return units.angle === 1 ? 'angle' : 'count'
}
