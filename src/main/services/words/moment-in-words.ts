const DAY = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric' })
const CLOCK = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' })

/**
 * A moment by this machine's clock: `25 November 2026, 14:02`.
 * @param at ISO 8601; what is none is given back as it is
 */
export function momentInWords(at: string): string {
  const moment = new Date(at)
  return Number.isNaN(moment.getTime()) ? at : `${DAY.format(moment)}, ${CLOCK.format(moment)}`
}
