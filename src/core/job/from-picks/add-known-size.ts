import { reason } from '../../words/core-words.ts'
import { called } from '../ids/label.ts'
import type { Mint } from '../ids/mint-ids.ts'
import { type Identity, newIdentity } from '../ids/new-identity.ts'
import { REFERENCE_NEEDS } from '../model/mark-needs.ts'
import type { Job, Reference, View } from '../model/types.ts'
import { addMarks } from './add-marks.ts'
import type { Made, PickedMark, PicksRefused } from './picked-mark.ts'

/** A figured size as it was written down. */
export type KnownSize = { u?: string } & ({ size: string } | { width: string; height: string })

/** Adds a figured size with its marks to a view, as one edit. */
export function addKnownSize(
  job: Job,
  view: View,
  marks: readonly PickedMark[] | PicksRefused,
  size: KnownSize,
  mint: Mint,
): Made {
  if ('refused' in marks) return marks
  const { edits, ids } = addMarks(job, view.sheet, marks, mint)
  const item = reference(newIdentity('reference', view.references, mint), ids, size)
  if ('refused' in item) return item
  return {
    id: item.id,
    edit: {
      do: 'several',
      name: `add ${called('figured size', item)} to view “${view.name}”`,
      edits: [...edits, { do: 'add-reference', view: view.id, item }],
    },
  }
}

function reference(
  identity: Identity,
  [a, b, c, d, ...more]: readonly string[],
  size: KnownSize,
): Reference | PicksRefused {
  const u = size.u === undefined ? {} : { u: size.u }
  if ('width' in size) {
    const whole = a !== undefined && b !== undefined && c !== undefined && d !== undefined
    if (!whole || more.length > 0) return otherMarks('rectangle', [a, b, c, d, ...more])
    return {
      ...identity,
      kind: 'rectangle',
      marks: [a, b, c, d],
      width: size.width,
      height: size.height,
      ...u,
    }
  }
  if (a !== undefined && b === undefined)
    return { ...identity, kind: 'diameter', marks: [a], size: size.size, ...u }
  if (a === undefined || b === undefined || c !== undefined)
    return otherMarks('distance', [a, b, c, d, ...more])
  return { ...identity, kind: 'distance', marks: [a, b], size: size.size, ...u }
}

const otherMarks = (
  kind: keyof typeof REFERENCE_NEEDS,
  marks: readonly (string | undefined)[],
): PicksRefused => ({
  refused: reason('picks.other-marks', {
    what: kind,
    wanted: REFERENCE_NEEDS[kind],
    given: marks.filter((mark) => mark !== undefined).length,
  }),
})
