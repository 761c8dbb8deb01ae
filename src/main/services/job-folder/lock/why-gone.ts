import type { Here } from './here.ts'
import type { LockHolder } from './lock-holder.ts'
import type { FoundLock } from './look-at-lock.ts'
import { standingOf, type WhyDead, whyDead } from './standing-of.ts'

/** A lock file, whether it can be read or not. */
export type Present = Extract<FoundLock, { kind: 'held' | 'unreadable' }>

/** Why a lock file locks nothing any more. */
export type WhyGone = WhyDead | 'unreadable'

/**
 * Whether a lock file that can't be read is what a power cut left of one: it is from before this machine was started,
 * and nobody who lives takes that long to fill it. One that says something whole may be of a version of this program to
 * come.
 */
export const isLeft = (found: FoundLock, here: Here): boolean =>
  found.kind === 'unreadable' && !found.says && found.changed < here.bootedAt

/** How a lock file stands, as far as that is certain from here. */
export type Judged =
  | { kind: 'gone'; why: WhyGone }
  | { kind: 'at-work'; holder: LockHolder }
  | { kind: 'not-known'; holder: LockHolder | undefined }

export function judge(found: Present, here: Here): Judged {
  if (found.kind === 'unreadable') {
    return isLeft(found, here)
      ? { kind: 'gone', why: 'unreadable' }
      : { kind: 'not-known', holder: undefined }
  }
  const { holder } = found
  const standing = standingOf(holder, here)
  const why = whyDead(standing)
  if (why !== undefined) return { kind: 'gone', why }
  return { kind: standing === 'at-work' ? 'at-work' : 'not-known', holder }
}

/** True only when it is certain that a lock file locks nothing any more. */
export const isGone = (found: FoundLock, here: Here): boolean =>
  (found.kind === 'held' || found.kind === 'unreadable') && judge(found, here).kind === 'gone'
