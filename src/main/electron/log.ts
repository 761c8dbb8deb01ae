import { oneLine } from '../services/log/one-line.ts'

/** Writes one line: what was done, and with what, as it came over the wire. */
export type Log = (what: string, subject?: string) => void

/** The line for a log: no control characters, so that what came over the wire can't write lines of its own. */
export const logLine = (what: string, subject = ''): string =>
  oneLine(subject === '' ? what : `${what}: ${subject}`)
