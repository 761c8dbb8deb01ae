import { FormulaError } from '../../formula/formula-error.ts'
import { GeometryError } from '../../geometry/geometry-error.ts'
import type { Dimension, Evidence } from '../../job/model/types.ts'
import { NotationError } from '../../quantity/notation/notation-error.ts'
import { reason } from '../../words/core-words.ts'
import { derivedEvidence } from './derived-evidence.ts'
import { type EvaluatedEvidence, without } from './evaluated-evidence.ts'
import type { EvaluationContext } from './evaluation-context.ts'
import { foundEvidence } from './found-evidence.ts'
import { printedEvidence } from './printed-evidence.ts'
import { scaledEvidence } from './scaled-evidence.ts'

/** Evaluates one piece of evidence of a dimension; what is wrong with it becomes its `problem`. */
export function evaluateEvidence(
  evidence: Evidence,
  dimension: Dimension,
  context: EvaluationContext,
): EvaluatedEvidence {
  if (evidence.withdrawn !== undefined)
    return without(evidence, reason('evidence.withdrawn', { why: evidence.withdrawn }))
  try {
    return byBasis(evidence, dimension, context)
  } catch (error) {
    if (error instanceof NotationError || error instanceof GeometryError || error instanceof FormulaError) {
      return without(evidence, error.reason)
    }
    throw error
  }
}

function byBasis(evidence: Evidence, dimension: Dimension, context: EvaluationContext): EvaluatedEvidence {
  switch (evidence.basis) {
    case 'printed':
      return printedEvidence(evidence, dimension, context)
    case 'found':
      return foundEvidence(evidence, dimension, {
        conventions: context.conventions,
        instrument: evidence.instrument === undefined ? undefined : context.instrumentOf(evidence.instrument),
        limitOf: context.limitOf,
        scatterOf: context.scatterOf,
      })
    case 'scaled':
      return scaledEvidence(evidence, context)
    case 'derived':
      return derivedEvidence(evidence, dimension.kind, context)
  }
}
