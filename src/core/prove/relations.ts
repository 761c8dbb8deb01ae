import type { Formula } from '../formula/formula.ts'
import { FormulaError } from '../formula/formula-error.ts'
import { UNITS_OF_KIND } from '../formula/formula-units.ts'
import { parseRelation } from '../formula/relation-text.ts'
import type { Job, Relation } from '../job/model/types.ts'
import { curvedDecision } from '../ledger/adoption/curved-decision.ts'
import type { Assessed } from '../ledger/assessment/assessed.ts'
import type { Assessment } from '../ledger/assessment/assessment.ts'
import { lookIntoFirstOrder, type Worked } from '../ledger/evidence/beyond-first-order.ts'
import { angleInRadians } from '../quantity/angle.ts'
import { NotationError } from '../quantity/notation/notation-error.ts'
import { parseAngle } from '../quantity/parse/parse-angle.ts'
import { parseArea } from '../quantity/parse/parse-area.ts'
import { parseLength } from '../quantity/parse/parse-length.ts'
import type { QuantityKind } from '../quantity/quantity-kind.ts'
import { standardUncertainty } from '../uncertainty/covariance.ts'
import { expand } from '../uncertainty/coverage.ts'
import { FIRST_ORDER } from '../uncertainty/first-order.ts'
import { BEYOND_DOUBT } from '../uncertainty/normalised-error.ts'
import { measured, propagate, type Uncertain } from '../uncertainty/uncertain.ts'
import { reason } from '../words/core-words.ts'
import type { AnyReason } from '../words/reason.ts'

/** How a relation closes, in mm, mm², radians or a plain number by its kind. */
export interface Closure {
  kind: QuantityKind
  /** Left less right. */
  misclosure: number
  /** Standard uncertainty of it, with the correlations of what stands in the relation. */
  u: number
  /** Expanded uncertainty of it at 95 %; where first order does not hold, to the farther end by Monte Carlo. */
  U: number
  /** Whether it is a difference of exact figures alone. */
  exact: boolean
  /** misclosure / u, at most 999 either way. */
  w: number
  /** Whether the misclosure is within its U at 95 %. */
  holds: boolean
}

/**
 * Closes a relation, or says why it can't be checked.
 * Figures count as ± half their last graduation or their tolerance.
 */
export function closureOf(relation: Relation, assessment: Assessment): Closure | { problem: AnyReason } {
  try {
    return closed(relation, parseRelation(relation.text), assessment)
  } catch (error) {
    if (error instanceof FormulaError) return { problem: error.reason }
    throw error
  }
}

function closed(
  { text, u }: Relation,
  { left, right }: ReturnType<typeof parseRelation>,
  assessment: Assessment,
): Closure | { problem: AnyReason } {
  const compared = (name: string): Uncertain | null =>
    assessment.dimensions.get(name)?.decision.compared ?? null
  const missing = [...new Set([...left.names, ...right.names])].filter((name) => compared(name) === null)
  if (missing.length > 0) return { problem: reason('relation.needs-values', { names: missing }) }
  const kind = kindOf(left, assessment)
  const slack = slackOf(u, kind, assessment.job)
  if ('problem' in slack) return slack
  const value = (name: string): Uncertain => compared(name) as Uncertain
  const [a, b] = [left.value(value, FIRST_ORDER), right.value(value, FIRST_ORDER)]
  const difference = propagate(a.value - b.value, [a, b], [1, -1])
  if (!Number.isFinite(difference.value) || !Number.isFinite(standardUncertainty(difference))) {
    return { problem: reason('relation.without-value') }
  }
  const lookedInto = lookIntoFirstOrder(leftLessRight(text, left, right), 'compared', difference, {
    curved: (name) => curvedDecision((assessment.dimensions.get(name) as Assessed).decision),
    within: { dimension: value },
  })
  if ('problem' in lookedInto) return lookedInto
  const misclosure = propagate(difference.value, [lookedInto.value, slack], [1, 1])
  const expanded = expand(misclosure)
  const rounding = 1e-9 * Math.max(Math.abs(a.value), Math.abs(b.value))
  const m = Math.abs(misclosure.value) <= rounding ? 0 : misclosure.value
  return {
    kind,
    misclosure: m,
    u: expanded.u,
    U: expanded.U,
    exact: [...left.names, ...right.names].every((name) => isExact(assessment, name)),
    w: normalised(m, expanded.u),
    holds: Math.abs(m) <= expanded.U,
  }
}

const leftLessRight = (text: string, left: Formula, right: Formula): Worked => ({
  text,
  names: [...new Set([...left.names, ...right.names])],
  linear: left.linear && right.linear,
  edges: () => [...left.edges(), ...right.edges()],
  value: (of, arithmetic) => arithmetic.subtract(left.value(of, arithmetic), right.value(of, arithmetic)),
})

const isExact = ({ dimensions }: Assessment, name: string): boolean =>
  dimensions.get(name)?.decision.adopted?.sources.length === 0

function normalised(m: number, u: number): number {
  if (m === 0) return 0
  if (u === 0) return Math.sign(m) * BEYOND_DOUBT
  return Math.max(-BEYOND_DOUBT, Math.min(m / u, BEYOND_DOUBT))
}

/** What the relation may miss by, in the units of its kind. */
function slackOf(text: string | undefined, kind: QuantityKind, job: Job): Uncertain | { problem: AnyReason } {
  if (text === undefined) return measured(0, 0, '')
  try {
    return measured(0, readSlack(text, kind, job), 'what the relation may miss by')
  } catch (error) {
    if (!(error instanceof NotationError)) throw error
    return { problem: reason('relation.slack-of-another-kind', { problem: error.reason }) }
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
      throw new NotationError(text, 0, reason('relation.counts-have-no-slack'))
  }
}

function kindOf(side: Formula, { dimensions }: Assessment): QuantityKind {
  const units = side.units((name) => UNITS_OF_KIND[dimensions.get(name)?.dimension.kind ?? 'count'])
  if (units.length === 1) return 'length'
  if (units.length === 2) return 'area'
  return units.angle === 1 ? 'angle' : 'count'
}
