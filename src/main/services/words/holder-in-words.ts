import type { HolderPart } from './reason-types.ts'

const DAY = { day: 'numeric', month: 'long', year: 'numeric' } as const
const CLOCK = { hour: '2-digit', minute: '2-digit' } as const

/**
 * A moment by this machine's clock: `25 November 2026, 14:02`.
 * @param at ISO 8601; what is none is given back as it is
 */
function momentInWords(at: string): string {
  const moment = new Date(at)
  if (Number.isNaN(moment.getTime())) return at
  // Each is made when it is wanted: a formatter that stands ready would cost every process its 10 MB.
  return `${moment.toLocaleDateString('en-GB', DAY)}, ${moment.toLocaleTimeString('en-GB', CLOCK)}`
}

/** Who holds the lock, for a person: `rivet on bench-2 (process 4711) since 1 March 2026, 08:00`. */
export function holderInWords(holder: HolderPart | null): string {
  if (holder === null) return 'somebody unknown (its .lock file is damaged)'
  return `${holder.user} on ${holder.host} (process ${holder.pid}) since ${momentInWords(holder.since)}`
}
