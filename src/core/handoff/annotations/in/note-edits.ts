import type { Edit } from '../../../job/edits/edit.ts'
import { countingIds } from '../../../job/ids/counting-ids.ts'
import { labelsAmong } from '../../../job/ids/labels-of-job.ts'
import type { Mint } from '../../../job/ids/mint-ids.ts'
import type { Job, Note } from '../../../job/model/types.ts'
import type { AnnotationReason } from '../../../words/annotations.ts'
import { reason } from '../../../words/core-words.ts'
import { nameIn } from '../../../words/name-in.ts'
import { NotesThere } from './notes-there.ts'
import type { Finding } from './read-annotation.ts'
import { type Writer, Writers } from './writers.ts'

/** Edits that add notes to a job, the ids of these notes, and what is to be known, each thing once. */
export interface NoteEdits {
  edits: Edit[]
  notes: string[]
  remarks: AnnotationReason[]
}

/**
 * The edits that add to a job what annotations come to. Notes that the job has already, word for word, are passed
 * over; a note whose id is taken gets another; who wrote one and is not among the people of the job is added to them.
 * @param by the id of the person who is named for annotations without a creator
 * @param mint gives ids to notes and people that are new; without it they go by numbers
 */
export function noteEdits(
  job: Job,
  findings: readonly Finding[],
  by: string | undefined,
  mint?: Mint,
): NoteEdits {
  const edits: Edit[] = []
  const notes: Note[] = []
  const remarks: AnnotationReason[] = []
  const there = new NotesThere(job, mint)
  const writers = new Writers(job, mint ?? countingIds())
  let alreadyHere = 0
  for (const finding of findings) {
    for (const remark of finding.remarks) remarks.push(remark)
    if (finding.found === undefined) continue
    const { note, creator, wanted, number } = finding.found
    if (there.has(note, creator?.name, writers.nameOf)) {
      alreadyHere++
      continue
    }
    const writer: Partial<Writer> = creator === null ? { id: by } : writers.idOf(creator, notes)
    if (writer.edit !== undefined) edits.push(writer.edit)
    const taken = wanted !== undefined && there.isTaken(wanted)
    const identity = there.takeIdentity(wanted, number)
    if (taken) {
      remarks.push(
        nameIn(
          reason('annotation.id-taken', { id: wanted, instead: identity.id }),
          labelsAmong(() => [job.notes, notes, [identity]]),
        ),
      )
    }
    const item: Note = { ...identity, ...note, ...(writer.id === undefined ? {} : { by: writer.id }) }
    edits.push({ do: 'add-note', item })
    notes.push(item)
  }
  return {
    edits,
    notes: notes.map(({ id }) => id),
    remarks: [...counted(remarks), ...alreadyHereRemark(alreadyHere)],
  }
}

const alreadyHereRemark = (notes: number): AnnotationReason[] =>
  notes === 0 ? [] : [reason('annotation.already-here', { notes })]

/** The same thing said several times becomes one remark that says how often. */
function counted(remarks: readonly AnnotationReason[]): AnnotationReason[] {
  const times = new Map<string, { remark: AnnotationReason; times: number }>()
  for (const remark of remarks) {
    const key = JSON.stringify(remark)
    const known = times.get(key)
    if (known === undefined) times.set(key, { remark, times: 1 })
    else known.times++
  }
  return [...times.values()].map((one) => (one.times === 1 ? one.remark : reason('annotation.times', one)))
}
