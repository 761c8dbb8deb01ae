import { reason } from '../../words/core-words.ts'
import type { Edit } from '../edits/edit.ts'
import { called } from '../ids/label.ts'
import type { Mint } from '../ids/mint-ids.ts'
import { newIdentity } from '../ids/new-identity.ts'
import { kindOfMeasure, MEASURE_NEEDS } from '../model/mark-needs.ts'
import type { Dimension, Evidence, Job, Measure } from '../model/types.ts'
import { addMarks } from './add-marks.ts'
import type { Made, PickedMark, PicksRefused } from './picked-mark.ts'
import { printedBeside } from './printed-beside.ts'

/** What was picked to be measured. */
export interface PickedMeasure {
  /** The view by whose scale it is measured, by its id. */
  view: string
  measure: Measure
  marks: readonly PickedMark[] | PicksRefused
}

/** What a dimension that was picked is called, how many of it there are, and the figure that is printed for it. */
export interface NamedDimension {
  name: string
  label: string
  count: number
  /** As it stands on the sheet that was picked on; left out where none is printed or it was not written down. */
  printed?: string
}

/** Adds what was measured as a dimension of its own, with its marks and the figure that is printed for it, as one edit. */
export function addDimension(
  job: Job,
  picked: PickedMeasure,
  { name, label, count, printed }: NamedDimension,
  mint: Mint,
): Made {
  const scaled = scaledEvidence(job, picked, [], mint)
  if ('refused' in scaled) return scaled
  const sheet = job.views.find(({ id }) => id === picked.view)?.sheet
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
            evidence: [scaled.item, ...printedBeside(printed, sheet, [scaled.item], mint)],
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
  const shared = restsAlreadyOn(to, picked.marks)
  if (shared !== undefined) {
    const mark = job.marks.find(({ id }) => id === shared) ?? { id: shared }
    return {
      refused: reason('picks.rests-on-it', { dimension: to.label || to.name, mark: called('mark', mark) }),
    }
  }
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

/** An old mark among what was picked that the dimension rests on already: it would be its own witness. */
function restsAlreadyOn(to: Dimension, marks: PickedMeasure['marks']): string | undefined {
  if ('refused' in marks) return undefined
  const old = new Set(
    to.evidence.flatMap((piece) =>
      piece.basis === 'scaled' && piece.withdrawn === undefined ? piece.marks : [],
    ),
  )
  return marks.find((mark): mark is string => typeof mark === 'string' && old.has(mark))
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
