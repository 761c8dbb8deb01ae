import { parseFormula } from '../../formula/formula.ts'
import type { Evidence } from '../../job/model/types.ts'
import type { QuantityKind } from '../../quantity/quantity-kind.ts'
import { standardUncertainty } from '../../uncertainty/covariance.ts'
import { expand } from '../../uncertainty/coverage.ts'
import { exact, type Uncertain } from '../../uncertainty/uncertain.ts'
import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import { type FirstOrderLook, lookIntoFirstOrder } from './beyond-first-order.ts'
import { type EvaluatedEvidence, without } from './evaluated-evidence.ts'
import type { EvaluationContext } from './evaluation-context.ts'
import type { Which, WorkOut } from './valuation.ts'

/**
 * Works a value out from other dimensions: what is adopted from what they adopt, what is compared from what they are
 * compared by.
 * @throws FormulaError when the formula can't be read
 */
export function derivedEvidence(
  evidence: Extract<Evidence, { basis: 'derived' }>,
  kind: QuantityKind,
  context: EvaluationContext,
): EvaluatedEvidence {
  const { hasValue, within } = context
  const formula = parseFormula(evidence.formula)
  const missing = withoutValue(formula.names, hasValue)
  if (missing.length > 0) {
    return without(evidence, reason('evidence.needs-values', { names: missing }))
  }
  const workOut: WorkOut = (which, { arithmetic, dimension }) =>
    formula.value((name) => dimension(name, which), arithmetic)
  const look = (which: Which): FirstOrderLook | { problem: AnyReason } => {
    const value = withoutRounding(workOut(which, within))
    const problem = problemOf(evidence.formula, value, kind)
    return problem === null ? lookIntoFirstOrder(formula, which, value, context) : { problem }
  }
  const adopted = look('adopted')
  if ('problem' in adopted) return without(evidence, adopted.problem)
  // Where its dimensions are compared by what they adopt, so is what is worked out from them.
  const same = formula.names.every(
    (name) => within.dimension(name, 'adopted') === within.dimension(name, 'compared'),
  )
  const compared = same ? adopted : look('compared')
  if ('problem' in compared) return without(evidence, compared.problem)
  const evaluated: EvaluatedEvidence = {
    evidence,
    adopted: adopted.value,
    compared: compared.value,
    coverage: expand(compared.value),
    workOut,
    written: '',
    usable: true,
  }
  const between = betweenOf(adopted, compared)
  if (between !== undefined) evaluated.between = between
  return evaluated
}

function betweenOf(adopted: FirstOrderLook, compared: FirstOrderLook): EvaluatedEvidence['between'] {
  if (adopted.interval === undefined && compared.interval === undefined) return undefined
  return {
    ...(adopted.interval === undefined ? {} : { adopted: adopted.interval }),
    ...(compared.interval === undefined ? {} : { compared: compared.interval }),
  }
}

/** What is left of an uncertainty only by the rounding of numbers, as a share of the value: that of `a / a`. */
const ROUNDING = 1e-12

const withoutRounding = (x: Uncertain): Uncertain =>
  standardUncertainty(x) <= ROUNDING * Math.abs(x.value) ? exact(x.value) : x

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
