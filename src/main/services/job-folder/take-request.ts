import {
  addPerson,
  applyEdit,
  describeEdit,
  type Edit,
  personOf,
  reviewEdit,
  stampEdit,
} from '../../../core/job/edits/edit.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'
import { guardScans } from './guard-scans.ts'
import { afterEdit, afterRedo, afterUndo } from './history.ts'
import type { EditRequest, SessionState, Transition } from './session-state.ts'

/**
 * Evidence is withdrawn, never removed: the edits that remove it exist to take back an edit that added it, so only
 * undo and redo may make them.
 * @throws ServiceError for such an edit, also inside several
 */
function mustNotRemoveEvidence(edit: Edit): void {
  if (edit.do === 'several') edit.edits.forEach(mustNotRemoveEvidence)
  if ('undo' in edit && edit.undo === true) throw new ServiceError(reason('session.evidence-stays'))
}

/** What a request does, stamped with who and when; before it, the edit that adds a person nobody knew. */
export async function takeRequest(
  folder: string,
  state: SessionState,
  request: EditRequest,
  by: string,
  at: string,
): Promise<{ step: Transition; introduction: Transition | undefined }> {
  if (request.kind !== 'edit') {
    return { step: await applyRequest(folder, state, request, by, at), introduction: undefined }
  }
  const asked = request.edit
  mustNotRemoveEvidence(asked)
  reviewEdit(state.job, asked)
  const person = personOf(state.job, by)
  if (person !== undefined) {
    const edit = stampEdit(state.job, asked, { by: person.id, at })
    return {
      step: await applyRequest(folder, state, { kind: 'edit', edit }, by, at),
      introduction: undefined,
    }
  }
  const { id, edit: introduce } = addPerson(state.job, by)
  const edit = stampEdit(state.job, asked, { by: id, at })
  // Nothing says who made it, so nobody needs to be known.
  if (sameJson(edit, stampEdit(state.job, asked, { by: undefined, at }))) {
    return {
      step: await applyRequest(folder, state, { kind: 'edit', edit }, by, at),
      introduction: undefined,
    }
  }
  const introduction = await applyRequest(folder, state, { kind: 'edit', edit: introduce }, by, at)
  return { step: await applyRequest(folder, introduction.next, { kind: 'edit', edit }, by, at), introduction }
}

async function applyRequest(
  folder: string,
  state: SessionState,
  request: EditRequest,
  by: string,
  at: string,
): Promise<Transition> {
  const { history } = state
  const n = (state.job.edition ?? 0) + 1
  if (request.kind === 'edit') {
    const { edit } = request
    const { job, inverse } = applyEdit(state.job, edit)
    const name = describeEdit(edit)
    const scans = await guardScans(folder, state, job, true)
    const next = {
      job: { ...job, edition: n },
      history: afterEdit(history, { n, name, edit: inverse }),
      scans,
    }
    return { line: { n, at, by, edit }, name, next }
  }
  const top = request.kind === 'undo' ? history.undo?.top : history.redo?.top
  if (top === undefined) {
    throw new ServiceError(
      reason(request.kind === 'undo' ? 'session.nothing-to-undo' : 'session.nothing-to-redo'),
    )
  }
  const named = { n: top.n, name: top.name }
  const { job, inverse } = applyEdit(state.job, top.edit)
  const scans = await guardScans(folder, state, job, false)
  const entry = { ...named, edit: inverse }
  const undoing = request.kind === 'undo'
  return {
    line: { n, at, by, edit: top.edit, ...(undoing ? { undoes: named } : { redoes: named }) },
    name: `${request.kind} ${top.name}`,
    next: {
      job: { ...job, edition: n },
      history: undoing ? afterUndo(history, entry) : afterRedo(history, entry),
      scans,
    },
  }
}

const sameJson = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b)
