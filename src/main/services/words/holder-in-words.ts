import { momentInWords } from './moment-in-words.ts'
import type { HolderPart } from './reason-types.ts'

/** Who holds the lock, for a person: `rivet on bench-2 (process 4711) since 1 March 2026, 08:00`. */
export function holderInWords(holder: HolderPart | null): string {
  if (holder === null) return 'somebody unknown (its .lock file is damaged)'
  return `${holder.user} on ${holder.host} (process ${holder.pid}) since ${momentInWords(holder.since)}`
}
