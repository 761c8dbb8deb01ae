import { parseFormula } from '../../formula/formula.ts'
import type { Evidence } from '../../job/model/types.ts'
import type { QuantityKind } from '../../quantity/quantity-kind.ts'
import { standardUncertainty } from '../../uncertainty/covariance.ts'
import { expand } from '../../uncertainty/coverage.ts'
import type { Uncertain } from '../../uncertainty/uncertain.ts'
import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import { type EvaluatedEvidence, without } from './evaluated-evidence.ts'
import type { EvaluationContext } from './evaluation-context.ts'
import type { WorkOut } from './valuation.ts'

/**
 * Works a value out from other dimensions: what is adopted from what they adopt, what is compared from what they are
 * compared by.
 * @throws FormulaError when the formula can't be read
 */
export function derivedEvidence(
  evidence: Extract<Evidence, { basis: 'derived' }>,
  kind: QuantityKind,
  { hasValue, within }: EvaluationContext,
): EvaluatedEvidence {
  const formula = parseFormula(evidence.formula)
  const missing = withoutValue(formula.names, hasValue)
  if (missing.length > 0) {
    return without(evidence, reason('evidence.needs-values', { names: missing }))
  }
  const workOut: WorkOut = (which, { arithmetic, dimension }) =>
    formula.value((name) => dimension(name, which), arithmetic)
  const adopted = workOut('adopted', within)
  const compared = workOut('compared', within)
  const problem = problemOf(evidence.formula, adopted, kind) ?? problemOf(evidence.formula, compared, kind)
  if (problem !== null) return without(evidence, problem)
  const coverage = expand(compared)
  return { evidence, adopted, compared, coverage, workOut, written: '', usable: true }
}

// Apart, so that the way a value was worked out holds on to no more than its formula.
const withoutValue = (names: readonly string[], hasValue: EvaluationContext['hasValue']): string[] =>
  names.filter((name) => !hasValue(name))

function problemOf(formula: string, x: Uncertain, kind: QuantityKind): AnyReason | null {
  if (!Number.isFinite(x.value)) return reason('formula.without-value', { formula })
  if (x.value < 0 && kind !== 'angle') {
    return reason('formula.below-nothing', { formula })
  }
  if (!Number.isFinite(standardUncertainty(x))) {
    return reason('formula.without-uncertainty', { formula })
  }
  return null
}
