import { reason } from '../../words/core-words.ts'
import type { Edit } from '../edits/edit.ts'
import type { Mint } from '../ids/mint-ids.ts'
import { newIdentity } from '../ids/new-identity.ts'
import type { Dimension, Evidence, Job, Measure } from '../model/types.ts'
import { addMarks } from './add-marks.ts'
import type { Made, PickedMark, PicksRefused } from './picked-mark.ts'
import { printedBeside } from './printed-beside.ts'

/** The sizes of a slot, each a measure of its two round ends. */
export const SLOT_MEASURES = {
  width: 'slot-width',
  length: 'slot-length',
  centres: 'centres',
} as const satisfies Record<string, Measure>

export type SlotSize = keyof typeof SLOT_MEASURES

/** The two round ends of a slot that was picked. */
export interface PickedSlot {
  /** The view by whose scale it is measured, by its id. */
  view: string
  /** Two circles. */
  ends: readonly PickedMark[] | PicksRefused
}

/** A size of a slot as it is kept. */
export interface NamedSlotSize {
  size: SlotSize
  name: string
  label: string
  /** The figure that is printed for it; left out where none is, or it was not written down. */
  printed?: string
}

/** What a slot is called, how many of it there are, and which of its sizes are kept. */
export interface NamedSlot {
  label: string
  count: number
  sizes: readonly NamedSlotSize[]
}

/** Edits that add the ends of a slot, and the ids of the two; or why they are none. */
function addEnds(
  job: Job,
  { view, ends }: PickedSlot,
  mint: Mint,
): { edits: Edit[]; ids: string[]; sheet: string } | PicksRefused {
  if ('refused' in ends) return ends
  const of = job.views.find(({ id }) => id === view)
  if (of === undefined) return { refused: reason('edit.no-such-item', { kind: 'view', id: view }) }
  const [one, other] = ends
  if (one === undefined || other === undefined || ends.length > 2) {
    const wanted = ['circle', 'circle']
    return { refused: reason('picks.other-marks', { what: 'slot', wanted, given: ends.length }) }
  }
  if (one === other) return { refused: reason('picks.one-end-twice') }
  return { ...addMarks(job, of.sheet, ends, mint), sheet: of.sheet }
}

/**
 * Adds the sizes of a slot that are wanted as dimensions, as one edit. All are measured between the same two marks, so that
 * what they share goes into them as one: length over all less width is what lies between the centres, whatever the picks.
 * @returns with the name of the first of them as its id
 */
export function addSlot(job: Job, picked: PickedSlot, { label, count, sizes }: NamedSlot, mint: Mint): Made {
  const [first] = sizes
  if (first === undefined) return { refused: reason('picks.no-slot-size') }
  const added = addEnds(job, picked, mint)
  if ('refused' in added) return added
  const { edits, ids, sheet } = added
  const dimension = ({ size, name, label, printed }: NamedSlotSize): Dimension => {
    const item: Evidence = {
      ...newIdentity('scaled', [], mint),
      basis: 'scaled',
      view: picked.view,
      measure: SLOT_MEASURES[size],
      marks: ids,
    }
    const evidence = [item, ...printedBeside(printed, sheet, [item], mint)]
    return { name, label, kind: 'length', ...(count === 1 ? {} : { count }), evidence }
  }
  return {
    id: first.name,
    edit: {
      do: 'several',
      name: `add slot “${label}”`,
      edits: [...edits, ...sizes.map((size): Edit => ({ do: 'add-dimension', item: dimension(size) }))],
    },
  }
}

/**
 * The diameters of both ends as if they were evidence of one dimension, to be tried and not kept: they agree where the ends
 * are of one size, and are disputed where they differ by more than their uncertainty allows (E_n, ISO/IEC 17043, with what
 * they share taken off).
 */
export function trySlotEnds(job: Job, picked: PickedSlot, name: string, mint: Mint): Made {
  const added = addEnds(job, picked, mint)
  if ('refused' in added) return added
  const evidence: Evidence[] = []
  for (const mark of added.ids) {
    const identity = newIdentity('scaled', evidence, mint)
    evidence.push({ ...identity, basis: 'scaled', view: picked.view, measure: 'diameter', marks: [mark] })
  }
  return {
    id: name,
    edit: {
      do: 'several',
      name,
      edits: [...added.edits, { do: 'add-dimension', item: { name, label: name, kind: 'length', evidence } }],
    },
  }
}
