import type { Edit } from '../edits/edit.ts'
import type { Mint } from '../ids/mint-ids.ts'
import { newIdentities } from '../ids/new-identity.ts'
import type { Job } from '../model/types.ts'
import type { PickedMark } from './picked-mark.ts'

/** Edits that add to a sheet the marks that are new, and the ids of all marks in the order that they were picked. */
export function addMarks(
  job: Job,
  sheet: string,
  marks: readonly PickedMark[],
  mint: Mint,
): { edits: Edit[]; ids: string[] } {
  const next = newIdentities('mark', job.marks, mint)
  const edits: Edit[] = []
  const ids = marks.map((mark) => {
    if (typeof mark === 'string') return mark
    const identity = next()
    edits.push({ do: 'add-mark', item: { ...identity, sheet, ...mark } })
    return identity.id
  })
  return { edits, ids }
}
