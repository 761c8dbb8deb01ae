const DAY = { day: 'numeric', month: 'long', year: 'numeric' } as const
const CLOCK = { hour: '2-digit', minute: '2-digit' } as const

/**
 * A moment by this machine's clock: `25 November 2026, 14:02`.
 * @param at ISO 8601; what is none is given back as it is
 */
export function momentInWords(at: string): string {
  const moment = new Date(at)
  if (Number.isNaN(moment.getTime())) return at
  // Each is made when it is wanted: a formatter that stands ready would cost every process its 10 MB.
  return `${moment.toLocaleDateString('en-GB', DAY)}, ${moment.toLocaleTimeString('en-GB', CLOCK)}`
}
