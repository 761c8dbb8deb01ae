import { FormulaError } from '../../formula/formula-error.ts'
import { GeometryError } from '../../geometry/geometry-error.ts'
import type { Dimension, Evidence } from '../../job/model/types.ts'
import { NotationError } from '../../quantity/notation/notation-error.ts'
import { derivedEvidence } from './derived-evidence.ts'
import { type EvaluatedEvidence, without } from './evaluated-evidence.ts'
import type { EvaluationContext } from './evaluation-context.ts'
import { foundEvidence } from './found-evidence.ts'
import type { FoundScatter } from './found-scatter.ts'
import { printedEvidence } from './printed-evidence.ts'
import { scaledEvidence } from './scaled-evidence.ts'

/** Words with a full stop at their end. */
const sentence = (words: string): string => (/[.!?]\s*$/.test(words) ? words : `${words}.`)

/**
 * Evaluates one piece of evidence; what is wrong with it becomes its `problem`.
 * @param scatter of the dimension's readings, by instrument
 */
export function evaluateEvidence(
  evidence: Evidence,
  dimension: Dimension,
  scatter: ReadonlyMap<string | undefined, FoundScatter>,
  context: EvaluationContext,
): EvaluatedEvidence {
  if (evidence.withdrawn !== undefined) return without(evidence, sentence(`Withdrawn: ${evidence.withdrawn}`))
  try {
    return byBasis(evidence, dimension, scatter, context)
  } catch (error) {
    const about = [NotationError, GeometryError, FormulaError]
    if (about.some((kind) => error instanceof kind))
      return without(evidence, sentence((error as Error).message))
    throw error
  }
}

function byBasis(
  evidence: Evidence,
  dimension: Dimension,
  scatter: ReadonlyMap<string | undefined, FoundScatter>,
  context: EvaluationContext,
): EvaluatedEvidence {
  switch (evidence.basis) {
    case 'printed':
      return printedEvidence(evidence, dimension, context)
    case 'found':
      return foundEvidence(
        evidence,
        dimension.kind,
        context.job,
        context.instruments,
        scatter.get(evidence.instrument),
      )
    case 'scaled':
      return scaledEvidence(evidence, context)
    case 'derived':
      return derivedEvidence(evidence, dimension.kind, context)
  }
}
