import {
  addPerson,
  applyEdit,
  describeEdit,
  personOf,
  readEdit,
  reviewEdit,
  stampEdit,
} from '../../../core/job/edits/edit.ts'
import { ServiceError } from '../service-error.ts'
import { guardScans } from './guard-scans.ts'
import { afterEdit, afterRedo, afterUndo } from './history.ts'
import { mustNotRemoveEvidence } from './must-not-remove.ts'
import type { EditRequest, SessionState, Transition } from './session-state.ts'

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
  const asked = readEdit(JSON.parse(JSON.stringify(request.edit)))
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
    // Exactly what the journal will give back on replay is what is applied.
    const edit = readEdit(JSON.parse(JSON.stringify(request.edit)))
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
      request.kind === 'undo' ? 'There is nothing to undo.' : 'There is nothing to redo.',
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
