import { isDeepStrictEqual } from 'node:util'
import { type Edit, EditRun, readEdit } from '../../../../core/job/edits/edit.ts'
import type { Job } from '../../../../core/job/model/types.ts'
import { ScantlingError } from '../../../../core/words/scantling-error.ts'
import { beginHistory } from './begin-history.ts'
import { chainLine } from './chain-lines.ts'
import type { HeldHistory } from './held-history.ts'
import { type EditLine, isBegin, type LineRef, type Tip } from './kept-line.ts'
import { readLine } from './line-text.ts'
import { saidBy } from './said-by.ts'

/** A history that goes with a job, made of what is still known of its own. */
export interface RescuedHistory {
  bytes: Buffer
  job: Job
  /** Its last line. */
  tip: Tip
  /**
   * The first edit that it still tells, where those before are gone; one more than the job's last where none is told.
   * null: it is whole.
   */
  begins: number | null
}

type Known = Omit<EditLine, 'edit' | 'back'> & { edit: Edit; back: Edit }

/** The line of an edit that this program understands; undefined for any other. */
function editOf(bytes: Buffer): Known | undefined {
  const line = readLine(bytes)?.line
  if (line === undefined || isBegin(line)) return undefined
  try {
    return { ...line, edit: readEdit(line.edit), back: readEdit(line.back) }
  } catch (error) {
    if (error instanceof ScantlingError) return undefined
    throw error
  }
}

/** A job after some edits; undefined where one can't be made. */
function made(job: Job, edits: readonly Edit[]): Job | undefined {
  const run = new EditRun(job)
  try {
    for (const edit of edits) run.make(edit)
  } catch (error) {
    if (error instanceof ScantlingError) return undefined
    throw error
  }
  return run.job
}

/** The last edits of a job, the oldest first, and the job before them, from which they lead to the job again. */
function knownEdits(job: Job, { lines }: HeldHistory): { before: Job; edits: Known[] } {
  const edits: Known[] = []
  for (const bytes of lines.toReversed()) {
    const edit = editOf(bytes)
    if (edit === undefined) break
    edits.push(edit)
  }
  const backs = edits.map(({ back }) => back)
  const before = made(job, backs)
  edits.reverse()
  const again =
    before &&
    made(
      before,
      edits.map(({ edit }) => edit),
    )
  const leadsBack = again !== undefined && isDeepStrictEqual(saidBy(again), saidBy(job))
  return before !== undefined && leadsBack ? { before, edits } : { before: job, edits: [] }
}

/**
 * The longest history of a job that can be told: all of it where it is known; or one that begins with the job as it stood
 * before the first edit that is, so that what was done since can be told and undone.
 * @param job as it stands after the line `tip`
 * @param at when: ISO 8601
 */
export function rescuedHistory(job: Job, tip: Tip, held: HeldHistory, at: string): RescuedHistory {
  const last = held.lines.at(-1)
  if (held.whole && last !== undefined) {
    const bytes = Buffer.concat(held.lines.flatMap((line) => [line, NEWLINE]))
    const place = { ...tip, at: bytes.length - last.length - 1, end: bytes.length }
    return { bytes, job, tip: place, begins: null }
  }
  const { before, edits } = knownEdits(job, held)
  const first = edits[0]?.n ?? tip.n + 1
  const begun = beginHistory({ ...before, edition: first - 1 }, { at, by: '', from: null })
  const texts = [begun.text]
  const places = new Map<number, LineRef>()
  let end = begun.tip
  // What led to lines that are gone leads nowhere.
  const moved = (ref: LineRef | null): LineRef | null => (ref && places.get(ref[0])) ?? null
  for (const { below, beside, ...line } of edits) {
    const links = { below: moved(below), ...(beside === undefined ? {} : { beside: moved(beside) }) }
    const { text, tip: placed } = chainLine(line, links, end)
    texts.push(text)
    places.set(line.n, [line.n, placed.at])
    end = placed
  }
  const { id } = begun.job
  const now = { ...job, id, edition: end.n }
  // Before the first edit of all there was nothing to tell.
  return { bytes: Buffer.from(texts.join('')), job: now, tip: end, begins: first === 1 ? null : first }
}

const NEWLINE = Buffer.from('\n')
