import type { RequestAnswer } from '../../contract/requests.ts'
import { describeEdit, type Edit } from '../../core/job/edits/edit.ts'
import type { PicksRefused } from '../../core/job/from-picks/picked-mark.ts'
import type { Job } from '../../core/job/model/types.ts'
import type { AnyReason } from '../../core/words/reason.ts'
import { inWords, reason, sentenceOf } from '../words/window-words.ts'
import { useBench } from './bench-store.ts'
import { countRefused, inTurn } from './in-turn.ts'
import { tell } from './notices.ts'
import { takeCommitted } from './store-sync.ts'
import { ask, isForLookingOnly, tellRefusal, theHost } from './the-host.ts'
import { refusedAsTheirs, type StepKind, type TheirStep, theirStep } from './their-step.ts'
import { type Signed, signed } from './who-is-at-work.ts'
import { writtenIn } from './written-in.ts'

/** What is to be made of the job: an edit, or why none; null: nothing is to be changed. */
type Made = { edit: Edit } | { refused: AnyReason } | null

/**
 * Makes an edit, after all that were asked for before it. True once it is on disk; false when it was refused, and the
 * person has been told why.
 */
export const makeEdit = (edit: Edit): Promise<boolean> => makeThen(() => ({ edit }))

/** Makes the edit that picks come to; where they come to none, the person is told why. */
export const makeOf = (made: { edit: Edit } | PicksRefused): Promise<boolean> => makeThen(() => made)

/**
 * As `makeEdit`, of the job as it is once all that was asked for before is made.
 * @param made called when it is its turn
 */
export function makeThen(made: (job: Job) => Made): Promise<boolean> {
  const who = signed()
  return inTurn(async () => {
    const by = await who
    if (by === null) return notSigned()
    const { opened } = useBench.getState()
    const wanted = opened === null ? null : made(opened.job)
    if (wanted === null) return true
    const kept = 'edit' in wanted ? await send(wanted.edit, by, opened?.job) : toldWhy(wanted.refused)
    if (!kept) countRefused()
    return kept
  })
}

/** Whoever would not say who they are is not kept waiting: what they wrote stays where it is. */
function notSigned(): false {
  countRefused()
  return false
}

async function send(edit: Edit, by: Signed, job: Job | undefined): Promise<boolean> {
  const reply = await theHost().ask('edit', { edit, ...by })
  if (reply.ok) return took(reply.answer)
  if (isForLookingOnly(reply)) tellNotKept(edit, job)
  else tell('failed', reply.sentence)
  return false
}

function toldWhy(refused: AnyReason): false {
  tell('failed', sentenceOf(refused))
  return false
}

export const undo = (): Promise<boolean> => step('undo')

export const redo = (): Promise<boolean> => step('redo')

/**
 * A step back or forth, after all that was asked for before it; where somebody else made that edit, the person is asked
 * first. As long as they are being asked, no further step is taken.
 */
function step(kind: StepKind): Promise<boolean> {
  const who = signed()
  return inTurn(async () => {
    const by = await who
    if (by === null) return notSigned()
    const { opened, person, theirs } = useBench.getState()
    if (opened === null || theirs !== null) return false
    if ((kind === 'undo' ? opened.undoName : opened.redoName) === undefined) return false
    return stepUnlessTheirs(kind, by, theirStep(opened, kind, person))
  })
}

async function stepUnlessTheirs(kind: StepKind, by: Signed, known: TheirStep | null): Promise<boolean> {
  if (known === null) {
    const reply = await theHost().ask(kind, by)
    if (reply.ok) return took(reply.answer)
    // An edit of somebody else's that this window has not heard of yet.
    const heard = refusedAsTheirs(reply)
    if (heard === null) tellRefusal(reply)
    else useBench.setState({ theirs: heard })
  } else useBench.setState({ theirs: known })
  return false
}

/** Takes the step that somebody else's edit is taken by, once that was asked. */
export function takeTheirs({ kind }: TheirStep): Promise<boolean> {
  useBench.setState({ theirs: null })
  const who = signed()
  return inTurn(async () => {
    const by = await who
    return by === null ? notSigned() : took(await ask(kind, { ...by, theirs: true }))
  })
}

/** Tells what was to be kept of an edit that the job does not take any more; why, stands above the bench. */
function tellNotKept(edit: Edit, job: Job | undefined): void {
  const parts = { what: describeEdit(edit, job), written: writtenIn(edit) }
  tell('failed', inWords(reason('edit.not-kept', parts)), inWords(reason('edit.can-be-kept', parts)))
}

function took(committed: RequestAnswer<'edit'> | undefined): boolean {
  if (committed === undefined) return false
  takeCommitted(committed)
  return true
}
