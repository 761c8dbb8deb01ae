import type { Evidence } from '../../job/model/types.ts'
import { element } from '../../linear-algebra/element.ts'
import { covariance, variance } from '../../uncertainty/covariance.ts'
import { normalisedError } from '../../uncertainty/normalised-error.ts'
import type { EvaluatedEvidence } from '../evidence/evaluated-evidence.ts'

/** A piece of evidence that says again what another says. */
export interface Duplicate {
  piece: EvaluatedEvidence
  /** The one it counts as one with. */
  of: EvaluatedEvidence
}

/** Evidence of one dimension, by what it rests on. */
export interface Witnesses {
  /** The first of those that rest on the same, in the order of the evidence. */
  witnesses: EvaluatedEvidence[]
  duplicates: Duplicate[]
}

/**
 * Parts the evidence that says something of its own from what rests on the same picks, the same formula, or for other
 * reasons on the same sources of error: such pieces agree whatever is wrong with them.
 * @param values usable evidence with a value
 */
export function witnessesAmong(values: readonly EvaluatedEvidence[]): Witnesses {
  const witnesses: EvaluatedEvidence[] = []
  const duplicates: Duplicate[] = []
  for (const piece of values) {
    const of = witnesses.find((one) => saysTheSame(one, piece))
    if (of === undefined) witnesses.push(piece)
    else duplicates.push({ piece, of })
  }
  return { witnesses, duplicates }
}

/** Share of the variance of two values that their difference may have for them to be of one source. */
const OF_ONE_SOURCE = 1e-6
/** Of that size, in standard uncertainties, is a difference that is only rounding. */
const ROUNDING = 1e-3

function saysTheSame(a: EvaluatedEvidence, b: EvaluatedEvidence): boolean {
  if (a.compared === null || b.compared === null) return false
  const [x, y] = [a.compared, b.compared]
  if (figureScales(a, b) > HALF || figureScales(b, a) > HALF) return true
  if (restOnTheSame(a.evidence, b.evidence)) return normalisedError(x, y) <= 1
  const [vx, vy] = [variance(x), variance(y)]
  const v = Math.max(vx, vy)
  // Two exact counts share nothing.
  if (v === 0) return false
  const apart = vx + vy - 2 * covariance(x, y)
  return apart <= OF_ONE_SOURCE * v && Math.abs(x.value - y.value) <= ROUNDING * Math.sqrt(v)
}

/** A value that moves with more than half of a figure would show less than half of what is wrong with it. */
const HALF = 0.5

/** How much of a scaled value moves with a printed figure, since the scale of its view was taken from it; 0 of others. */
export function figureScales(figure: EvaluatedEvidence, scaled: EvaluatedEvidence): number {
  if (figure.evidence.basis !== 'printed' || scaled.shareOfFigure === undefined) return 0
  return scaled.shareOfFigure((figure.adopted ?? figure.compared)?.value ?? Number.NaN)
}

function restOnTheSame(a: Evidence, b: Evidence): boolean {
  if (a.basis === 'scaled' && b.basis === 'scaled') return sameMarks(a.marks, b.marks)
  if (a.basis === 'found' && b.basis === 'found') {
    return a.instrument === b.instrument && sameReadings(a.readings, b.readings)
  }
  if (a.basis === 'derived' && b.basis === 'derived') return closedUp(a.formula) === closedUp(b.formula)
  return false
}

const sameMarks = (a: readonly string[], b: readonly string[]): boolean =>
  new Set(a).size === new Set(b).size && a.every((id) => b.includes(id))

/** One sitting entered twice; a single reading may well come out the same again. */
const sameReadings = (a: readonly string[], b: readonly string[]): boolean =>
  a.length > 1 && a.length === b.length && a.every((text, i) => closedUp(text) === closedUp(element(b, i)))

const closedUp = (formula: string): string => formula.replaceAll(/\s+/g, '')
