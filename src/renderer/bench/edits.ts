import type { RequestAnswer } from '../../contract/requests.ts'
import { describeEdit, type Edit } from '../../core/job/edits/edit.ts'
import type { PicksRefused } from '../../core/job/from-picks/picked-mark.ts'
import type { Job } from '../../core/job/model/types.ts'
import { inWords, reason, sentenceOf } from '../words/window-words.ts'
import { useBench } from './bench-store.ts'
import { tell } from './notices.ts'
import { takeCommitted } from './store-sync.ts'
import { ask, isForLookingOnly, theHost } from './the-host.ts'
import { type StepKind, type TheirStep, theirStep } from './their-step.ts'
import { writtenIn } from './written-in.ts'

/** Who it is by, and the job that it is meant for. */
export function signed(): { by: string; job?: string } {
  const { person, opened } = useBench.getState()
  return { by: person, ...(opened === null ? {} : { job: opened.id }) }
}

/** Makes an edit. True once it is on disk; false when it was refused, and the person has been told why. */
export async function makeEdit(edit: Edit): Promise<boolean> {
  const { opened } = useBench.getState()
  const reply = await theHost().ask('edit', { edit, ...signed() })
  if (reply.ok) return took(reply.answer)
  tell('failed', isForLookingOnly(reply) ? notKept(edit, opened?.job) : reply.sentence)
  return false
}

/** Makes the edit that picks come to; where they come to none, the person is told why. */
export async function makeOf(made: { edit: Edit } | PicksRefused): Promise<boolean> {
  if ('edit' in made) return makeEdit(made.edit)
  tell('failed', sentenceOf(made.refused))
  return false
}

export const undo = (): Promise<boolean> => step('undo')

export const redo = (): Promise<boolean> => step('redo')

/** A step back or forth; where somebody else made that edit, the person is asked first. */
async function step(kind: StepKind): Promise<boolean> {
  const { opened, person } = useBench.getState()
  const theirs = opened && theirStep(opened, kind, person)
  if (theirs === null) return took(await ask(kind, signed()))
  useBench.setState({ theirs })
  return false
}

/** Takes the step that somebody else's edit is taken by, once that was asked. */
export async function takeTheirs({ kind }: TheirStep): Promise<boolean> {
  useBench.setState({ theirs: null })
  return took(await ask(kind, { ...signed(), theirs: true }))
}

/** What was to be kept of an edit that the job does not take any more; why, stands above the bench. */
function notKept(edit: Edit, job: Job | undefined): string {
  const written = writtenIn(edit)
  return inWords(reason('edit.not-kept', { what: describeEdit(edit, job), written }))
}

function took(committed: RequestAnswer<'edit'> | undefined): boolean {
  if (committed === undefined) return false
  takeCommitted(committed)
  return true
}
