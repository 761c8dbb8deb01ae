import type { Edit } from '../edits/edit.ts'
import type { Job, Note } from '../model/types.ts'
import { freshId } from './fresh-id.ts'

/** Adds a note about a region; who wrote it and when is put in as it is kept. */
export function addNote(
  job: Job,
  { about, ...said }: Pick<Note, 'sheet' | 'outline' | 'text' | 'about'>,
): { edit: Edit; id: string } {
  const id = freshId(
    'N',
    job.notes.map((note) => note.id),
  )
  const item: Note = { id, ...said, ...(about === undefined || about === '' ? {} : { about }) }
  return { id, edit: { do: 'add-note', item } }
}
