import { exact } from '../../uncertainty/uncertain.ts'
import type { EvaluatedEvidence } from '../evidence/evaluated-evidence.ts'
import type { WorkOut } from '../evidence/valuation.ts'
import { type Decision, decidedValue } from './adopt.ts'

const isCurved = ({ between }: EvaluatedEvidence): boolean => between !== undefined

/**
 * How a decision comes about, where first order does not hold for some of what it rests on; null where it does for all.
 * What first order holds for is taken by it.
 */
export function curvedDecision(decision: Decision): WorkOut | null {
  if (!decision.from.some(isCurved)) return null
  return (which, within) =>
    decidedValue(decision, which, within.arithmetic, (evidence, which) =>
      evidence.workOut !== null && isCurved(evidence)
        ? evidence.workOut(which, within)
        : within.arithmetic.of(evidence[which] ?? exact(Number.NaN)),
    )
}
