import { applyEdit, describeEdit, readEdit } from '../../../core/job/edits/edit.ts'
import type { Job } from '../../../core/job/model/types.ts'
import { ScantlingError } from '../../../core/words/scantling-error.ts'
import { ServiceError } from '../service-error.ts'
import { afterEdit, afterRedo, afterUndo, emptyHistory, type History } from './history.ts'
import type { Named } from './journal-line.ts'

export interface Replayed {
  job: Job
  history: History
  /** Bytes of the journal that hold whole lines; what follows is a torn tail. */
  soundBytes: number
  /** What was dropped, in a sentence. */
  warning?: string
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

function dropped(path: string, lineNumber: number, bytes: Buffer): string {
  const shown = bytes
    .subarray(0, SHOWN)
    .toString('utf8')
    .replace(/[^\x20-\x7e]/g, '?')
  return (
    `The last line of ${path} (line ${lineNumber}) was not completely written and is left out: ` +
    `it begins "${shown}".`
  )
}

/**
 * Applies a journal to the job document it belongs to.
 * Lines up to the document's `edition` are already contained in it and are passed over.
 * @throws ServiceError with the line number for anything but a last line without its newline.
 */
export function replayJournal(document: Job, journal: Buffer, path: string): Replayed {
  let job = document
  let history = emptyHistory
  let expected: number | undefined
  let start = 0
  let lineNumber = 0

  const refuse = (what: string): never => {
    throw new ServiceError(
      `${path}, line ${lineNumber}: ${what}, so the job is not opened and nothing was changed; ` +
        'keep a copy of the folder, then repair that line or take the folder from a backup.',
    )
  }

  while (start < journal.length) {
    lineNumber += 1
    const newline = journal.indexOf(NEWLINE, start)
    const bytes = journal.subarray(start, newline === -1 ? journal.length : newline)
    // Only a line without its newline can be one whose writing was cut short, for the newline comes last.
    if (newline === -1) {
      return { job, history, soundBytes: start, warning: dropped(path, lineNumber, bytes) }
    }
    const line = parseLine(bytes)
    if (line === undefined) return refuse('this is not a line of JSON')

    const { n, at, by } = line
    if (typeof n !== 'number' || !Number.isSafeInteger(n) || n < 1) {
      return refuse('the line has no edit number "n"')
    }
    if (typeof at !== 'string' || typeof by !== 'string') {
      return refuse('the line does not say who made the edit and when ("by", "at")')
    }
    const edition = job.edition ?? 0
    if (expected !== undefined ? n !== expected : n > edition + 1) {
      refuse(
        `edit ${n} follows edit ${expected === undefined ? edition : expected - 1}, so edits are missing`,
      )
    }
    expected = n + 1
    start = newline + 1
    if (n <= edition) continue

    try {
      const edit = readEdit(line['edit'])
      const applied = applyEdit(job, edit)
      job = { ...applied.job, edition: n }
      const undoes = asNamed(line['undoes'])
      const redoes = asNamed(line['redoes'])
      if (undoes !== undefined && history.undo?.top.n === undoes.n) {
        history = afterUndo(history, { ...undoes, edit: applied.inverse })
      } else if (redoes !== undefined && history.redo?.top.n === redoes.n) {
        history = afterRedo(history, { ...redoes, edit: applied.inverse })
      } else {
        history = afterEdit(history, { n, name: describeEdit(edit), edit: applied.inverse })
      }
    } catch (error) {
      if (!(error instanceof ScantlingError)) throw error
      refuse(`edit ${n} can't be applied (${error.message.replace(/\.$/, '')})`)
    }
  }
  return { job, history, soundBytes: start }
}
