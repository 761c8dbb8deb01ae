import { afterNoun } from '../../core/job/ids/label.ts'
import type { Job, Note } from '../../core/job/model/types.ts'
import { plainText } from '../../core/words/plain-text.ts'
import type { Selection } from '../bench/selection.ts'
import type { Station } from '../bench/stations.ts'
import type { Item } from './items.ts'

export type NoteItem = Extract<Item, { kind: 'note' }>

/** A note's number as it is drawn, which N3 has in its id; of a longer id the end fits into the box. */
const numberOf = (note: Note): string =>
  plainText(/^N(\d{1,4})$/.exec(note.id)?.[1] ?? afterNoun(note).slice(0, 4))

/** Where figures are printed on a sheet, as far as the job knows: nothing that is lettered is to cover them. */
export const printedOn = (job: Job, sheet: string): NoteItem['printed'] =>
  job.dimensions.flatMap(({ evidence }) =>
    evidence.flatMap((one) =>
      one.basis === 'printed' && one.sheet === sheet && one.box !== undefined ? [one.box] : [],
    ),
  )

/**
 * The notes of a sheet: in brackets at the station where the sheet is looked over, and of a note that is chosen; elsewhere
 * by their boxed numbers alone, so that they don't hide what is measured.
 */
export function noteItems(shown: {
  job: Job
  sheet: string
  station: Station
  selection: Selection | null
}): NoteItem[] {
  const { job, sheet, station, selection } = shown
  const printed = printedOn(job, sheet)
  return job.notes
    .filter((note) => note.sheet === sheet && note.outline.length > 0)
    .map((note) => {
      const { id, outline } = note
      const chosen = selection?.kind === 'note' && selection.id === id
      return {
        kind: 'note',
        about: { kind: 'note', id },
        chosen,
        outline,
        number: numberOf(note),
        bracketed: chosen || station === 'sheet',
        printed,
      }
    })
}
