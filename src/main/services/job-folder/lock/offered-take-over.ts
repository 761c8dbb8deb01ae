import type { AnyReason } from '../../../../core/words/reason.ts'
import type { HolderPart } from '../../words/reason-types.ts'
import type { ServiceReason } from '../../words/services-words.ts'

/** A lock that may be taken over by whoever is asked. */
export interface OfferedTakeOver {
  /** What `openJob` is given to take this very lock over. */
  takeOver: string
  /** null: the lock file is damaged. */
  holder: HolderPart | null
}

type OfHeld = Extract<ServiceReason, { code: 'lock.held-out-of-sight' | 'lock.held-by-nobody-known' }>

const isOfHeld = (why: AnyReason): why is OfHeld =>
  why.code === 'lock.held-out-of-sight' || why.code === 'lock.held-by-nobody-known'

/** The lock for which a job is read-only, where it may be taken over; undefined where it is so for another reason. */
export function offeredTakeOver(because: AnyReason | undefined): OfferedTakeOver | undefined {
  if (because === undefined || !isOfHeld(because)) return undefined
  const { parts } = because
  return { takeOver: parts.takeOver, holder: 'holder' in parts ? parts.holder : null }
}
