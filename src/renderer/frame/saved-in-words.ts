import type { OpenedJob } from '../../contract/bench-state.ts'

const clock = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' })

/** What of the job is on disk, as a fact. */
export function savedInWords(opened: OpenedJob | null): string {
  if (opened === null) return ''
  if (!opened.writable) return 'For looking only'
  if (opened.savedAt === null) return 'Nothing changed yet'
  return `Saved ${clock.format(new Date(opened.savedAt))}`
}
