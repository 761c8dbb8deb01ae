import type { HolderPart } from './reason-types.ts'

const DAY = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric' })
const CLOCK = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' })

/**
 * A moment by this machine's clock: `25 November 2026, 14:02`.
 * @param at ISO 8601; what is none is given back as it is
 */
function momentInWords(at: string): string {
  const moment = new Date(at)
  return Number.isNaN(moment.getTime()) ? at : `${DAY.format(moment)}, ${CLOCK.format(moment)}`
}

/** Who holds the lock, for a person: `rivet on bench-2 (process 4711) since 1 March 2026, 08:00`. */
export function holderInWords(holder: HolderPart | null): string {
  if (holder === null) return 'somebody unknown (its .lock file is damaged)'
  return `${holder.user} on ${holder.host} (process ${holder.pid}) since ${momentInWords(holder.since)}`
}
