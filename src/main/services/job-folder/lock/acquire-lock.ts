import { rename, unlink } from 'node:fs/promises'
import { dirname } from 'node:path'
import { systemCause, systemCode } from '../../files/system-reason.ts'
import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'
import { createLock, keepName } from './create-lock.ts'
import { type Here, hereIn } from './here.ts'
import type { LockHolder } from './lock-holder.ts'
import { type FoundLock, type InTheWay, lookAtLock } from './look-at-lock.ts'
import { isLeft, judge, type WhyGone } from './why-gone.ts'

/** Why a lock was taken over: it locked nothing any more, or somebody who was asked said so. */
export type WhyTaken = WhyGone | 'asked'

export type LockOutcome =
  /** holder undefined: the lock file was damaged. */
  | { kind: 'acquired'; from?: { holder: LockHolder | undefined; why: WhyTaken } }
  /** By somebody who is certainly at work. */
  | { kind: 'held'; holder: LockHolder; takeOver?: undefined }
  /** holder undefined: the lock file is damaged. takeOver: what `acquireLock` is given to take this very lock over. */
  | { kind: 'held'; holder: LockHolder | undefined; takeOver: string }
  | { kind: 'in-the-way'; path: string; what: InTheWay }

/** Milliseconds. */
const MOMENT = 20
const TO_FILL = 300
const TO_SUCCEED = 2000

/** Between the tokens of locks that stand in one another's way. */
const AND = '+'

const moment = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, MOMENT))

/** What is there, once its writer has had time to fill it. */
async function filledLock(path: string, here: Here): Promise<FoundLock> {
  const until = performance.now() + TO_FILL
  for (;;) {
    const found = await lookAtLock(path)
    const settled = found.kind !== 'unreadable' || isLeft(found, here)
    if (settled || performance.now() > until) return found
    await moment()
  }
}

/**
 * Takes the lock at `path` for `holder`, or says who has it.
 *
 * A lock that locks nothing any more, or that is to be taken over, is succeeded by a claim named after that very hold
 * (`.lock.after-TOKEN`), itself a lock taken by this same function. Only whoever has the claim may replace the lock, and
 * only after seeing under the claim that it is still there; so of any number of processes that try at once exactly one
 * succeeds, and a claimant that dies half-way is succeeded in its turn.
 * @param takeOver the very lock that a person was told of, as an outcome named it, and wants taken over; another one
 * is not, nor one whose holder is certainly at work. Its holder, should it live, finds at its next edit that it is gone
 * @throws ServiceError where a lock can't be read, or the system's error where none can be written
 */
export async function acquireLock(path: string, holder: LockHolder, takeOver?: string): Promise<LockOutcome> {
  const here = await hereIn(dirname(path))
  const asked = new Set(takeOver?.split(AND))
  return acquire(path, holder, { here, asked, until: performance.now() + TO_SUCCEED })
}

interface Acquiring {
  here: Here
  /** Tokens of locks that are to be taken over. */
  asked: ReadonlySet<string>
  /** By `performance.now()`. */
  until: number
}

async function acquire(path: string, holder: LockHolder, how: Acquiring): Promise<LockOutcome> {
  const { here, asked, until } = how
  for (;;) {
    const found = await filledLock(path, here)
    if (found.kind === 'in-the-way') return { ...found, path }
    if (found.kind === 'absent') {
      if (await createLock(path, holder)) return { kind: 'acquired' }
      continue
    }
    const { token } = found
    const judged = judge(found, here)
    if (judged.kind === 'at-work') return { kind: 'held', holder: judged.holder }
    if (judged.kind === 'not-known' && !asked.has(token)) {
      return { kind: 'held', holder: judged.holder, takeOver: token }
    }
    const claim = `${path}.after-${token}`
    const claimed = await acquire(claim, holder, how)
    if (claimed.kind === 'in-the-way') return claimed
    if (claimed.kind === 'held') {
      if (claimed.holder !== undefined && performance.now() < until) {
        await moment()
        continue
      }
      const { takeOver } = claimed
      return takeOver === undefined ? claimed : { ...claimed, takeOver: `${token}${AND}${takeOver}` }
    }
    const still = await lookAtLock(path)
    if ('token' in still && still.token === token) {
      await rename(claim, path)
      await keepName(path)
      const why = judged.kind === 'gone' ? judged.why : 'asked'
      return { kind: 'acquired', from: { holder: found.kind === 'held' ? found.holder : undefined, why } }
    }
    await unlink(claim).catch(() => undefined)
  }
}

/** True while the lock file is the one this hold created. */
export async function stillHeld(path: string, holder: LockHolder): Promise<boolean> {
  try {
    const found = await lookAtLock(path)
    return found.kind === 'held' && found.token === holder.token
  } catch {
    return false
  }
}

/**
 * Gives the lock back; leaves a lock alone that is somebody else's by now.
 * @throws ServiceError when it can't be removed
 */
export async function releaseLock(path: string, holder: LockHolder): Promise<void> {
  if (!(await stillHeld(path, holder))) return
  try {
    await unlink(path)
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return
    throw new ServiceError(reason('lock.not-given-back', { path, cause: systemCause(error) }))
  }
}
