import { type NamedSlotSize, SLOT_MEASURES, type SlotSize } from '../../../core/job/from-picks/add-slot.ts'
import type { Job } from '../../../core/job/model/types.ts'
import type { AnyReason } from '../../../core/words/reason.ts'
import { isTaken, nameOfLabel, nameProblem } from '../../entering/name-of-label.ts'

/** The sizes of a slot in the order that they stand in the form. */
export const SLOT_SIZES = Object.keys(SLOT_MEASURES) as readonly SlotSize[]

export const SLOT_SIZE_WORDS: Readonly<Record<SlotSize, string>> = {
  width: 'Width',
  length: 'Length over all',
  centres: 'Between centres',
}

/** What its tick says. */
export const KEEP_WORDS: Readonly<Record<SlotSize, string>> = {
  width: 'Keep the width',
  length: 'Keep the length over all',
  centres: 'Keep the distance between centres',
}

/** What is written for a slot. */
export interface SlotDraft {
  label: string
  /** How many of it; null: as a figure says, or one. */
  count: number | null
  kept: Readonly<Record<SlotSize, boolean>>
  /** The figures on the sheet; empty where none is written down. */
  printed: Readonly<Record<SlotSize, string>>
}

export const NO_SLOT: SlotDraft = {
  label: '',
  count: null,
  kept: { width: true, length: true, centres: true },
  printed: { width: '', length: '', centres: '' },
}

/** The name of a size in formulas: `gland_slot_width`. Empty where the label of the slot gives none. */
export const slotSizeName = (label: string, size: SlotSize): string =>
  nameOfLabel(label) === '' ? '' : nameOfLabel(`${label} ${size}`)

/** The sizes that are kept of a slot, in their order. */
export const sizesKept = (draft: SlotDraft): SlotSize[] => SLOT_SIZES.filter((size) => draft.kept[size])

/** As the sizes that are ticked are kept, with the figures beside them. */
export const namedSizes = (draft: SlotDraft): NamedSlotSize[] =>
  sizesKept(draft).map((size) => {
    const label = draft.label.trim()
    const printed = draft.printed[size].trim()
    return {
      size,
      name: slotSizeName(label, size),
      label: `${label}, ${SLOT_SIZE_WORDS[size].toLowerCase()}`,
      ...(printed === '' ? {} : { printed }),
    }
  })

/** Why the sizes that are ticked can't have their names; null when they can, or while there is none. */
export function slotNameProblem(job: Job, draft: SlotDraft): AnyReason | null {
  for (const { name } of namedSizes(draft)) {
    const problem = name === '' ? null : nameProblem(job, name)
    if (problem !== null) return problem
  }
  return null
}

/** Whether a size of a slot of that label is in the job. */
export const isSlotTaken = (job: Job, label: string): boolean =>
  SLOT_SIZES.some((size) => isTaken(job, slotSizeName(label, size)))
