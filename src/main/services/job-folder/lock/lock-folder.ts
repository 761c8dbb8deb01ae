import type { AnyReason } from '../../../../core/words/reason.ts'
import { systemCause } from '../../files/system-reason.ts'
import { lockFile } from '../../job-layout/job-layout.ts'
import { ServiceError } from '../../service-error.ts'
import type { HolderPart } from '../../words/reason-types.ts'
import { reason, type ServiceReason } from '../../words/services-words.ts'
import { acquireLock, type LockOutcome } from './acquire-lock.ts'
import { folderNumbers } from './folder-numbers.ts'
import { type LockHolder, thisHolder } from './lock-holder.ts'

export type FolderLock =
  /** notice: what a person should know of the lock that was there before. */
  { kind: 'locked'; holder: LockHolder; notice?: ServiceReason } | { kind: 'refused'; why: AnyReason }

type Held = Extract<LockOutcome, { kind: 'held' }>
type Acquired = Extract<LockOutcome, { kind: 'acquired' }>

/** What of a hold is said to a person. */
const inPart = ({ user, person, host, pid, since }: LockHolder): HolderPart => ({
  user: person ?? user,
  host,
  pid,
  since,
})

function whyHeld({ holder, takeOver }: Held, path: string): ServiceReason {
  if (takeOver === undefined) return reason('lock.held', { holder: inPart(holder), path })
  if (holder === undefined) return reason('lock.held-by-nobody-known', { path, takeOver })
  return reason('lock.held-out-of-sight', { holder: inPart(holder), path, takeOver })
}

function whatWasTaken(from: NonNullable<Acquired['from']>, path: string): ServiceReason {
  const holder = from.holder === undefined ? null : inPart(from.holder)
  if (from.why === 'asked') return reason('lock.taken-over-when-asked', { holder })
  if (holder === null || from.why === 'unreadable') return reason('lock.taken-over-damaged', { path })
  switch (from.why) {
    case 'process-ended':
      return reason('lock.taken-over', { holder })
    case 'earlier-boot':
      return reason('lock.taken-over-after-start', { holder })
    case 'other-folder':
      return reason('lock.taken-over-in-copy', { holder })
  }
}

/**
 * Locks a job folder for this process, or says in a sentence why it can't.
 * @param takeOver the lock that a person was told of and wants taken over, as the reason for the refusal named it
 * @param person who is at work, where that is known
 */
export async function lockFolder(
  folder: string,
  now: Date,
  takeOver?: string,
  person?: string,
): Promise<FolderLock> {
  const path = lockFile(folder)
  const holder = thisHolder(now, await folderNumbers(folder), person)
  try {
    const outcome = await acquireLock(path, holder, takeOver)
    if (outcome.kind === 'in-the-way')
      return { kind: 'refused', why: reason('lock.in-the-way', { path: outcome.path, what: outcome.what }) }
    if (outcome.kind === 'held') return { kind: 'refused', why: whyHeld(outcome, path) }
    const { from } = outcome
    return { kind: 'locked', holder, ...(from === undefined ? {} : { notice: whatWasTaken(from, path) }) }
  } catch (error) {
    if (error instanceof ServiceError) return { kind: 'refused', why: error.reason }
    return { kind: 'refused', why: reason('lock.not-written', { cause: systemCause(error) }) }
  }
}
