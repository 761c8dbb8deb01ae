import { EditRun, readEdit } from '../../../../core/job/edits/edit.ts'
import type { HistoryLine, Named } from '../../../../core/job/history/history-line.ts'
import type { Job } from '../../../../core/job/model/types.ts'
import { ScantlingError } from '../../../../core/words/scantling-error.ts'
import { ServiceError } from '../../service-error.ts'
import { reason, type ServiceReason } from '../../words/services-words.ts'

/** What a folder of the form before holds: job.json, with the edits of its journal made. */
export interface ReplayedJournal {
  job: Job
  /** Those edits. */
  lines: HistoryLine[]
  /** What was dropped. */
  warning?: ServiceReason
}

const NEWLINE = 0x0a
const SHOWN = 60

const asNamed = (value: unknown): Named | undefined => {
  if (typeof value !== 'object' || value === null) return undefined
  const { n, name } = value as Record<string, unknown>
  return typeof n === 'number' && typeof name === 'string' ? { n, name } : undefined
}

function parseLine(bytes: Buffer): Record<string, unknown> | undefined {
  try {
    const value: unknown = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes))
    return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {}
  } catch {
    return undefined
  }
}

function dropped(path: string, lineNumber: number, bytes: Buffer): ServiceReason {
  const begins = bytes
    .subarray(0, SHOWN)
    .toString('utf8')
    .replace(/[^\x20-\x7e]/g, '?')
  return reason('journal.torn-line', { path, line: lineNumber, begins })
}

/**
 * Applies a journal to the job document it belongs to.
 * Lines up to the document's `edition` are already contained in it and are passed over.
 * @throws ServiceError with the line number for anything but a last line without its newline.
 */
export function replayJournal(document: Job, journal: Buffer, path: string): ReplayedJournal {
  const run = new EditRun(document)
  let { edition = 0 } = document
  const now = (): Job => (edition === (document.edition ?? 0) ? document : { ...run.job, edition })
  const lines: HistoryLine[] = []
  let expected: number | undefined
  let start = 0
  let lineNumber = 0

  const refuse = (problem: ServiceReason): never => {
    throw new ServiceError(reason('journal.bad-line', { path, line: lineNumber, problem }))
  }

  while (start < journal.length) {
    lineNumber += 1
    const newline = journal.indexOf(NEWLINE, start)
    const bytes = journal.subarray(start, newline === -1 ? journal.length : newline)
    // Only a line without its newline can be one whose writing was cut short, for the newline comes last.
    if (newline === -1) {
      return { job: now(), lines, warning: dropped(path, lineNumber, bytes) }
    }
    const line = parseLine(bytes)
    if (line === undefined) return refuse(reason('journal.not-json'))

    const { n, at, by } = line
    if (typeof n !== 'number' || !Number.isSafeInteger(n) || n < 1) {
      return refuse(reason('journal.no-number'))
    }
    if (typeof at !== 'string' || typeof by !== 'string') {
      return refuse(reason('journal.no-author'))
    }
    if (expected !== undefined ? n !== expected : n > edition + 1) {
      refuse(reason('journal.edits-missing', { n, after: expected === undefined ? edition : expected - 1 }))
    }
    expected = n + 1
    start = newline + 1
    if (n <= edition) continue

    try {
      const edit = readEdit(line['edit'])
      const back = run.make(edit)
      edition = n
      const undoes = asNamed(line['undoes'])
      const redoes = asNamed(line['redoes'])
      lines.push({
        n,
        at,
        by,
        edit,
        back,
        ...(undoes === undefined ? {} : { undoes }),
        ...(redoes === undefined ? {} : { redoes }),
      })
    } catch (error) {
      if (!(error instanceof ScantlingError)) throw error
      refuse(reason('journal.edit-not-applied', { n, problem: error.reason }))
    }
  }
  return { job: now(), lines }
}
