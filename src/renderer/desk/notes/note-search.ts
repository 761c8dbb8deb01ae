import { labelOfId } from '../../../core/job/ids/label.ts'
import type { Job, Note } from '../../../core/job/model/types.ts'
import { aboutOf, noteNumber, noteSignature } from './note-words.ts'

const folded = (text: string): string =>
  text.normalize('NFKC').toLocaleLowerCase('en-GB').replaceAll('−', '-')

/** Whether a note has every word that is looked for: in its text, who wrote it and when, what it is about, its sheet. */
function noteHas(job: Job, note: Note, sought: string): boolean {
  const words = folded(sought).split(/\s+/).filter(Boolean)
  if (words.length === 0) return true
  const sheet = job.sheets.find(({ id }) => id === note.sheet)?.title ?? ''
  const about = [note.about === undefined ? '' : labelOfId(note.about), aboutOf(job, note.about)?.words ?? '']
  const text = folded([note.text, noteSignature(job, note), ...about, sheet, noteNumber(note)].join('\n'))
  return words.every((word) => text.includes(word))
}

/** The notes that have what is looked for, those of one sheet after the other, by their numbers. */
export function notesFound(job: Job, sought: string): Note[] {
  const place = new Map(job.sheets.map(({ id }, k) => [id, k]))
  return job.notes
    .filter((note) => noteHas(job, note, sought))
    .sort(
      (a, b) =>
        (place.get(a.sheet) ?? 0) - (place.get(b.sheet) ?? 0) ||
        noteNumber(a).localeCompare(noteNumber(b), 'en-GB', { numeric: true }),
    )
}
