import { labelOfId } from '../../core/job/ids/label.ts'
import type { Job } from '../../core/job/model/types.ts'

/** The name of a person of the job; somebody it does not list is called what they are called. */
export const personName = (job: Job, by: string | undefined): string =>
  by === undefined ? 'somebody' : (job.people.find(({ id }) => id === by)?.name ?? labelOfId(by))

/** Who did something and when, as far as that is known: `A. Rivet, 9 Mar 2026, 10:05`; null: neither. */
export function signature(job: Job, by: string | undefined, at: string | undefined): string | null {
  if (by === undefined && at === undefined) return null
  const who = personName(job, by)
  return at === undefined ? who : `${who}, ${momentInWords(at)}`
}

/** Something that says who entered it and when, and who changed it last. */
interface Signed {
  readonly by?: string | undefined
  readonly at?: string | undefined
  readonly changedBy?: string | undefined
  readonly changedAt?: string | undefined
}

/** Who changed something last, to go on from who entered it: `, changed by C. Snips, 9 Mar 2026, 10:15`; empty: nobody. */
export function changedSince(job: Job, { changedBy, changedAt }: Signed): string {
  const who = signature(job, changedBy, changedAt)
  return who === null ? '' : `, changed by ${who}`
}

/** Who entered something and when, and who changed it last; null where that is not known. */
export function enteredBy(job: Job, thing: Signed): string | null {
  const who = signature(job, thing.by, thing.at)
  const changed = changedSince(job, thing)
  return who === null && changed === '' ? null : `${who ?? 'somebody'}${changed}`
}

const moment = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'short',
  year: 'numeric',
  hour: '2-digit',
  minute: '2-digit',
})

/** A moment in words, in the clock of this machine; what is no moment stays as it is. */
export function momentInWords(at: string | undefined): string {
  if (at === undefined) return 'undated'
  const date = new Date(at)
  return Number.isNaN(date.valueOf()) ? at : moment.format(date)
}
