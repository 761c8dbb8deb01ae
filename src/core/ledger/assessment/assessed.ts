import type { Dimension } from '../../job/model/types.ts'
import type { Decision } from '../adoption/adopt.ts'
import type { EvaluatedEvidence, UncheckedView } from '../evidence/evaluated-evidence.ts'

/** A dimension with all its evidence evaluated and one value adopted. */
export interface Assessed {
  dimension: Dimension
  evaluated: EvaluatedEvidence[]
  decision: Decision
  /** Disputed dimensions that the adopted value is worked out from. */
  restsOn: readonly string[]
  /** Views that the adopted value rests on and whose scale nothing checks. */
  unchecked: readonly UncheckedView[]
}
