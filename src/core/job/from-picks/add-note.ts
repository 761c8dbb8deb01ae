import type { Edit } from '../edits/edit.ts'
import type { Mint } from '../ids/mint-ids.ts'
import { newIdentity } from '../ids/new-identity.ts'
import type { Job, Note } from '../model/types.ts'

/** Adds a note about a region; who wrote it and when is put in as it is kept. */
export function addNote(
  job: Job,
  { about, ...said }: Pick<Note, 'sheet' | 'outline' | 'text' | 'about'>,
  mint: Mint,
): { edit: Edit; id: string } {
  const identity = newIdentity('note', job.notes, mint)
  const item: Note = { ...identity, ...said, ...(about === undefined || about === '' ? {} : { about }) }
  return { id: identity.id, edit: { do: 'add-note', item } }
}
