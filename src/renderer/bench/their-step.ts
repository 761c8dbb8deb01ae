import { z } from 'zod'
import type { OpenedJob } from '../../contract/bench-state.ts'
import type { Refused } from '../../contract/reply.ts'
import { personOf } from '../../core/job/edits/edit.ts'
import { momentInWords, personName } from './signature.ts'

/** A step back or forth. */
export type StepKind = 'undo' | 'redo'

/** An edit that somebody else made, which a step back or forth would take. */
export interface TheirStep {
  kind: StepKind
  /** What it is called. */
  name: string
  /** Who made it and when, in words. */
  made: string
}

/** Whether what undo or redo would take is somebody else's than the person at work; null where it is their own. */
export function theirStep(opened: OpenedJob, kind: StepKind, person: string): TheirStep | null {
  const name = kind === 'undo' ? opened.undoName : opened.redoName
  const made = kind === 'undo' ? opened.undoBy : opened.redoBy
  if (name === undefined || made === undefined) return null
  const idOf = (who: string): string => (personOf(opened.job, who)?.id ?? who.trim()).toLowerCase()
  if (idOf(made.by) === idOf(person)) return null
  return { kind, name, made: `${personName(opened.job, made.by)}, ${momentInWords(made.at)}` }
}

/** What a host says of a step that would take somebody else's edit. */
const ofAnother = z.object({
  code: z.literal('session.of-another'),
  parts: z.object({ kind: z.enum(['undo', 'redo']), name: z.string(), at: z.string(), edit: z.string() }),
})

/** The step that a host refused because it would take somebody else's edit; null where it refused for another reason. */
export function refusedAsTheirs({ reason }: Refused): TheirStep | null {
  const read = ofAnother.safeParse(reason)
  if (!read.success) return null
  const { kind, name, at, edit } = read.data.parts
  return { kind, name: edit, made: `${name}, ${momentInWords(at)}` }
}
