import type { HolderPart } from '../words/reason-types.ts'
import { reason, type ServiceReason } from '../words/services-words.ts'
import type { LockHolder } from './lock/lock-holder.ts'

/** What of a hold is said to a person. */
export const inPart = ({ user, host, pid, since }: LockHolder): HolderPart => ({ user, host, pid, since })

/** Why a folder can't be had for writing. @param holder undefined: the lock file is damaged */
export const heldBy = (holder: LockHolder | undefined, path: string): ServiceReason =>
  holder === undefined
    ? reason('lock.held-by-nobody-known', { path })
    : reason('lock.held', { holder: inPart(holder), path })
