import {
  addPerson,
  applyEdit,
  describeEdit,
  type Edit,
  makerOf,
  personOf,
  reviewEdit,
  stampEdit,
} from '../../../core/job/edits/edit.ts'
import { labelOfId } from '../../../core/job/ids/label.ts'
import type { Job } from '../../../core/job/model/types.ts'
import { goesWithItsSheet } from '../../../core/job/sheets/remove-sheet.ts'
import { mint } from '../ids/mint.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'
import { guardScans } from './guard-scans.ts'
import { chainLine } from './history/chain-lines.ts'
import type { LoadStep, Step } from './history/undo-stacks.ts'
import type { EditRequest, SessionState, StepRequest, Transition } from './session-state.ts'

/** Who makes a request and when, and what it is made with. */
export interface Making {
  folder: string
  /** The id or the name of a person of the job, or a new name. */
  by: string
  /** ISO 8601. */
  at: string
  /** The number of the first edit that goes to disk with this one. */
  together: number
  /** In which sitting of this opening a person, by id, makes it. */
  sittingOf: (person: string) => string
  load: LoadStep
}

/**
 * Evidence is withdrawn, never removed: the edits that remove it exist to take back an edit that added it, so only
 * undo and redo may make them; and it goes with the sheet that it came from.
 * @throws ServiceError for such an edit, also inside several
 */
function mustNotRemoveEvidence(
  job: Job,
  edit: Edit,
  goes: ReadonlySet<string> = goesWithItsSheet(job, edit),
): void {
  if (edit.do === 'several') for (const one of edit.edits) mustNotRemoveEvidence(job, one, goes)
  if (!('undo' in edit) || edit.undo !== true) return
  if (edit.do === 'remove-evidence' && goes.has(`${edit.dimension} ${edit.id}`)) return
  throw new ServiceError(reason('session.evidence-stays'))
}

/** What a request does, stamped with who and when; before it, the edit that adds a person nobody knew. */
export async function takeRequest(
  state: SessionState,
  request: EditRequest,
  making: Making,
): Promise<{ step: Transition; introduction: Transition | undefined }> {
  if (request.kind !== 'edit') {
    return { step: await makeStep(state, request, making), introduction: undefined }
  }
  const asked = request.edit
  const { by, at, sittingOf } = making
  mustNotRemoveEvidence(state.job, asked)
  reviewEdit(state.job, asked)
  const person = makerOf(state.job, asked, by)
  if (person !== undefined) {
    const edit = stampEdit(state.job, asked, { by: person.id, at, sitting: sittingOf(person.id) })
    return { step: await makeEdit(state, edit, making), introduction: undefined }
  }
  const { id, edit: introducing } = addPerson(state.job, by, mint)
  const sitting = sittingOf(id)
  const introduce = stampEdit(state.job, introducing, { by: id, at })
  const edit = stampEdit(state.job, asked, { by: id, at, sitting })
  // Nothing says who made it, so nobody needs to be known.
  if (sameJson(edit, stampEdit(state.job, asked, { by: undefined, at, sitting }))) {
    return { step: await makeEdit(state, edit, making), introduction: undefined }
  }
  const introduction = await makeEdit(state, introduce, making)
  // Nothing is seen to happen by it: it goes along with the edit that it was made for, and is no step back of its own.
  const introduced = { ...introduction.next, stacks: state.stacks }
  return { step: await makeEdit(introduced, edit, making), introduction }
}

/** What a line says of who made it: the id of a person of the job, or a name. */
const signature = (job: Job, by: string): string => personOf(job, by)?.id ?? by.trim()

async function makeEdit(state: SessionState, edit: Edit, making: Making): Promise<Transition> {
  const { job, inverse } = applyEdit(state.job, edit)
  const { at, together } = making
  const n = state.tip.n + 1
  // As it is called when the history is read again: by the job after it, and by what was there before.
  const name = describeEdit(edit, job, inverse)
  const by = signature(job, making.by)
  const line = { n, at, by, edit, back: inverse }
  const below = state.stacks.undo?.ref ?? null
  const { text, tip } = chainLine(line, { below }, state.tip, together)
  const undo: Step = { ref: [n, tip.at], named: { n, name }, edit: inverse, by, at, below }
  const scans = await guardScans(making.folder, state, job, true)
  return {
    line,
    text,
    name,
    next: { job: { ...job, edition: n }, stacks: { undo, redo: null }, scans, tip },
  }
}

/** Refuses to take back, or to make again, what somebody else did, unless that is what is asked. */
function mustBeTheirOwn(job: Job, { kind, theirs }: StepRequest, top: Step, by: string): void {
  if (theirs === true) return
  const [mine, other] = [signature(job, by), signature(job, top.by)]
  if (mine.toLowerCase() === other.toLowerCase()) return
  const name = personOf(job, other)?.name ?? labelOfId(other)
  throw new ServiceError(reason('session.of-another', { kind, name, at: top.at, edit: top.named.name }))
}

async function makeStep(state: SessionState, request: StepRequest, making: Making): Promise<Transition> {
  const { stacks } = state
  const { kind } = request
  const top = stacks[kind]
  if (top === null) {
    throw new ServiceError(reason(kind === 'undo' ? 'session.nothing-to-undo' : 'session.nothing-to-redo'))
  }
  mustBeTheirOwn(state.job, request, top, making.by)
  const { job, inverse } = applyEdit(state.job, top.edit)
  const { named, edit, below: next } = top
  const { at, together, load } = making
  const n = state.tip.n + 1
  const by = signature(job, making.by)
  const undoing = kind === 'undo'
  const other = stacks[undoing ? 'redo' : 'undo']
  const line = { n, at, by, edit, back: inverse, ...(undoing ? { undoes: named } : { redoes: named }) }
  const below = other?.ref ?? null
  const { text, tip } = chainLine(line, { below, beside: next }, state.tip, together)
  const step: Step = { ref: [n, tip.at], named, edit: inverse, by, at, below }
  const left = next && (await load(next, job))
  const scans = await guardScans(making.folder, state, job, false)
  return {
    line,
    text,
    name: `${kind} ${named.name}`,
    next: {
      job: { ...job, edition: n },
      stacks: undoing ? { undo: left, redo: step } : { undo: step, redo: left },
      scans,
      tip,
    },
  }
}

const sameJson = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b)
