import type { Edit } from '../../core/job/edits/edit.ts'
import type { Mint } from '../../core/job/ids/mint-ids.ts'
import type { Job, Unit } from '../../core/job/model/types.ts'
import type { FigureReading } from '../../core/reading/figure-reading.ts'
import { countIn } from '../entering/count-in-figure.ts'
import { draftedDimension } from '../entering/dimension-draft.ts'
import { type Drafted, draftedEvidence, type EvidenceDraft } from '../entering/new-evidence.ts'
import { standsAt } from './draft-of-reading.ts'

/** A figure that was read, as a person takes it. */
export interface TakenAs {
  sheet: string
  reading: FigureReading
  /** The figure as it is to stand in the job. */
  text: string
  /** Whether the person has no doubt of it. */
  sure: boolean
  /** To which dimension: one of the job by its name, or a new one; null: that is not said yet. */
  of: { is: 'there'; name: string } | { is: 'new'; name: string; label: string } | null
}

/** What taking it comes to: how it is understood, and the edit once all is said. */
export interface ReadDrafted {
  drafted: Drafted
  edit: Edit | null
}

/** Reads what a person takes as core will, by the rules that any printed figure goes by. */
export function readDraft(taken: TakenAs, job: Job, how: { unit: Unit; mint: Mint }): ReadDrafted {
  const { sheet, reading, text, sure, of } = taken
  const draft: EvidenceDraft = {
    basis: 'printed',
    text,
    legibility: sure ? 'clear' : 'doubtful',
    sheet,
    stands: standsAt(reading, !sure),
  }
  if (of?.is === 'there') {
    const dimension = job.dimensions.find(({ name }) => name === of.name)
    if (dimension !== undefined) {
      const drafted = draftedEvidence(draft, dimension, job, how)
      return { drafted, edit: drafted !== null && 'edit' in drafted ? drafted.edit : null }
    }
  }
  const { name, label } = of?.is === 'new' ? of : { name: '', label: '' }
  const kind = reading.kind !== null && text === reading.text ? reading.kind : null
  // Eight holes are one dimension of which there are eight.
  const count = countIn(job, text, kind ?? 'length') ?? 1
  const made = draftedDimension({ name, label, kind, count, from: draft }, job, how)
  if (made === null) return { drafted: null, edit: null }
  if ('refused' in made) return { drafted: made.refused, edit: null }
  const named = of?.is === 'new' && name !== '' && label.trim() !== ''
  return { drafted: made.understood, edit: named ? made.edit : null }
}
