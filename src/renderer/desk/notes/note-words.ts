import { afterNoun, called, labelOfId } from '../../../core/job/ids/label.ts'
import type { Job, Note } from '../../../core/job/model/types.ts'
import { capital } from '../../../core/words/capital.ts'
import type { Selection } from '../../bench/selection.ts'
import { changedSince, momentInWords, personName } from '../../bench/signature.ts'

/** What a note is called where it is drawn: its number, which N3 has in its id, else its id. */
export const noteNumber = (note: Pick<Note, 'id' | 'number'>): string =>
  /^N(\d{1,6})$/.exec(note.id)?.[1] ?? afterNoun(note)

/** Who wrote a note and when, and who changed it last. */
export const noteSignature = (job: Job, note: Note): string =>
  `${personName(job, note.by)}, ${momentInWords(note.at)}${changedSince(job, note)}`

/** What a note is about, in words and as something to choose; null when it does not say. */
export function aboutOf(
  job: Job,
  about: string | undefined,
): { words: string; selection: Selection | null } | null {
  if (about === undefined || about === '') return null
  const dimension = job.dimensions.find(({ name }) => name === about)
  if (dimension !== undefined) {
    const words = dimension.label === '' ? dimension.name : dimension.label
    return { words, selection: { kind: 'dimension', name: about } }
  }
  const view = job.views.find(({ id }) => id === about)
  if (view !== undefined) return { words: `View “${view.name}”`, selection: { kind: 'view', id: about } }
  const mark = job.marks.find(({ id }) => id === about)
  if (mark !== undefined) {
    return { words: capital(called('mark', mark)), selection: { kind: 'mark', id: about } }
  }
  const sheet = job.sheets.find(({ id }) => id === about)
  return { words: sheet === undefined ? labelOfId(about) : `Sheet “${sheet.title}”`, selection: null }
}
