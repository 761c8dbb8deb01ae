import type { Unit } from '../../job/model/types.ts'
import { toUncertainty, twoFigures } from '../../quantity/format/rounding.ts'
import type { QuantityKind } from '../../quantity/quantity-kind.ts'
import { variance } from '../../uncertainty/covariance.ts'
import type { EvaluatedEvidence } from '../evidence/evaluated-evidence.ts'
import { displayFactor } from '../units/display-units.ts'
import { plusMinus, unitSuffix } from '../units/plus-minus.ts'

/** How the evidence of a row and its differences are put into words. Values in mm, mm², radians or a plain number. */
export interface Telling {
  /** A piece of evidence, a measured value with its ±; a limit has none, for it is no value. */
  told(w: EvaluatedEvidence): { id: string; basis: string; written: string }
  /** A difference to what it is uncertain by: `0.51"`. */
  difference(size: number, U: number): string
  /** A size that is known to two figures: `0.10"`. */
  about(size: number): string
}

/** Whether a piece of evidence says one value without ±: a clear figure, or what is worked out from such. */
export const isExact = ({ adopted }: EvaluatedEvidence): boolean =>
  adopted !== null && variance(adopted) === 0

/** @param writtenOf what a piece of evidence is written as, without its ± */
export function tellingOf(
  kind: QuantityKind,
  unit: Unit,
  writtenOf: (w: EvaluatedEvidence) => string,
): Telling {
  const factor = displayFactor(kind, unit)
  const suffix = unitSuffix(kind, unit)
  const spread = (w: EvaluatedEvidence): string =>
    isExact(w) || w.limit !== undefined ? '' : plusMinus((w.coverage?.U ?? 0) * factor, kind, unit)
  return {
    told: (w) => ({ id: w.evidence.id, basis: w.evidence.basis, written: `${writtenOf(w)}${spread(w)}` }),
    difference: (size, U) => `${toUncertainty(Math.abs(size) * factor, U * factor)}${suffix}`,
    about: (size) => `${twoFigures(size * factor)}${suffix}`,
  }
}
