import { describeEdit } from '../../../../core/job/edits/edit.ts'
import type { HistoryLine } from '../../../../core/job/history/history-line.ts'
import type { Job } from '../../../../core/job/model/types.ts'
import { type Beginning, beginHistory } from './begin-history.ts'
import { chainLine, type StackLinks } from './chain-lines.ts'
import type { LineRef, Tip } from './kept-line.ts'
import { noStacks, type Stacks, type Step } from './undo-stacks.ts'

/** A history that was made of what a folder of the form before holds, and is not on disk yet. */
export interface CarriedOver {
  text: string
  tip: Tip
  job: Job
  stacks: Stacks
  /** What can be undone or made again by each of its lines. */
  steps: ReadonlyMap<number, Step>
}

/**
 * Makes a history of a job document and of the edits that were in its journal.
 * @param now the job with those edits made
 */
export function carryOver(
  document: Job,
  lines: readonly HistoryLine[],
  now: Job,
  how: Beginning,
): CarriedOver {
  const begun = beginHistory(document, how)
  let { text, tip } = begun
  let stacks: Stacks = noStacks
  const steps = new Map<number, Step>()
  const at = (ref: LineRef | null): Step | null => (ref && steps.get(ref[0])) ?? null

  for (const given of lines) {
    const { line, links, after } = placed(given, stacks, at)
    const next = chainLine(line, links, tip)
    const step: Step = {
      ref: [line.n, tip.end],
      named: line.undoes ?? line.redoes ?? { n: line.n, name: describeEdit(line.edit, now, line.back) },
      edit: line.back,
      by: line.by,
      at: line.at,
      below: links.below,
    }
    text += next.text
    tip = next.tip
    steps.set(line.n, step)
    stacks = after(step)
  }
  return { text, tip, stacks, steps, job: { ...now, id: begun.job.id, edition: tip.n } }
}

/** A line among what can be undone and made again; a step back or forth that is about something else is an edit of its own. */
function placed(
  line: HistoryLine,
  { undo, redo }: Stacks,
  at: (ref: LineRef | null) => Step | null,
): { line: HistoryLine; links: StackLinks; after: (step: Step) => Stacks } {
  const { undoes, redoes, ...plain } = line
  if (undoes !== undefined && undo?.named.n === undoes.n) {
    const links = { below: redo?.ref ?? null, beside: undo.below }
    return { line, links, after: (step) => ({ undo: at(undo.below), redo: step }) }
  }
  if (redoes !== undefined && redo?.named.n === redoes.n) {
    const links = { below: undo?.ref ?? null, beside: redo.below }
    return { line, links, after: (step) => ({ undo: step, redo: at(redo.below) }) }
  }
  return { line: plain, links: { below: undo?.ref ?? null }, after: (step) => ({ undo: step, redo: null }) }
}
