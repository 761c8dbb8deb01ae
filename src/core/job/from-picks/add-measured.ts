import { reason } from '../../words/core-words.ts'
import type { Edit } from '../edits/edit.ts'
import type { Mint } from '../ids/mint-ids.ts'
import { newIdentity } from '../ids/new-identity.ts'
import { kindOfMeasure, MEASURE_NEEDS } from '../model/mark-needs.ts'
import type { Evidence, Job, Measure } from '../model/types.ts'
import { addMarks } from './add-marks.ts'
import type { Made, PickedMark, PicksRefused } from './picked-mark.ts'

/** What was picked to be measured. */
export interface PickedMeasure {
  /** The view by whose scale it is measured, by its id. */
  view: string
  measure: Measure
  marks: readonly PickedMark[] | PicksRefused
}

/** Adds what was measured as a dimension of its own, with its marks, as one edit. */
export function addDimension(
  job: Job,
  picked: PickedMeasure,
  { name, label, count }: { name: string; label: string; count: number },
  mint: Mint,
): Made {
  const scaled = scaledEvidence(job, picked, [], mint)
  if ('refused' in scaled) return scaled
  return {
    id: name,
    edit: {
      do: 'several',
      name: `add dimension ${name}`,
      edits: [
        ...scaled.edits,
        {
          do: 'add-dimension',
          item: {
            name,
            label,
            kind: kindOfMeasure(picked.measure),
            ...(count === 1 ? {} : { count }),
            evidence: [scaled.item],
          },
        },
      ],
    },
  }
}

/** Adds what was measured to a dimension as further evidence, with its marks, as one edit. */
export function addScaledEvidence(job: Job, picked: PickedMeasure, dimension: string, mint: Mint): Made {
  const to = job.dimensions.find(({ name }) => name === dimension)
  if (to === undefined) return { refused: reason('edit.no-such-dimension', { name: dimension }) }
  const scaled = scaledEvidence(job, picked, to.evidence, mint)
  if ('refused' in scaled) return scaled
  const { edits, item } = scaled
  return {
    id: item.id,
    edit: {
      do: 'several',
      name: `add scaled evidence to ${dimension}`,
      edits: [...edits, { do: 'add-evidence', dimension, item }],
    },
  }
}

function scaledEvidence(
  job: Job,
  { view, measure, marks }: PickedMeasure,
  others: readonly Evidence[],
  mint: Mint,
): { edits: Edit[]; item: Evidence } | PicksRefused {
  if ('refused' in marks) return marks
  const of = job.views.find(({ id }) => id === view)
  if (of === undefined) return { refused: reason('edit.no-such-item', { kind: 'view', id: view }) }
  const needs = MEASURE_NEEDS[measure]
  if (!needs.some(({ length }) => length === marks.length)) {
    const wanted = needs[0] ?? []
    return { refused: reason('picks.other-marks', { what: measure, wanted, given: marks.length }) }
  }
  const { edits, ids } = addMarks(job, of.sheet, marks, mint)
  const identity = newIdentity('scaled', others, mint)
  return { edits, item: { ...identity, basis: 'scaled', view, measure, marks: ids } }
}
