import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import { fromWebAnnotations } from '../../../../src/core/handoff/annotations/in/from-web-annotations.ts'
import { niUri } from '../../../../src/core/handoff/annotations/model/ni-uri.ts'
import type { Edit } from '../../../../src/core/job/edits/edit.ts'
import { addKnownSize } from '../../../../src/core/job/from-picks/add-known-size.ts'
import { addDimension, addScaledEvidence } from '../../../../src/core/job/from-picks/add-measured.ts'
import { addNote } from '../../../../src/core/job/from-picks/add-note.ts'
import { addView, outlineBetween } from '../../../../src/core/job/from-picks/add-view.ts'
import { markByHand } from '../../../../src/core/job/from-picks/mark-by-hand.ts'
import type { Made, PickedMark } from '../../../../src/core/job/from-picks/picked-mark.ts'
import type { Mint } from '../../../../src/core/job/ids/mint-ids.ts'
import { FEWEST_PICKS, type MarkNeed, MEASURE_NEEDS } from '../../../../src/core/job/model/mark-needs.ts'
import type { Job, Measure } from '../../../../src/core/job/model/types.ts'
import { inWords } from '../../../../src/core/words/core-words.ts'
import { draftedEvidence, type EvidenceDraft } from '../../../../src/renderer/entering/new-evidence.ts'

/** Gives a whole number below the one it is asked for. */
export type Chance = (below: number) => number

const MEASURES = Object.keys(MEASURE_NEEDS) as Measure[]

/** One of a list. @throws Error for an empty one */
export function oneOf<T>(list: readonly T[], chance: Chance): T {
  const one = list[chance(list.length)]
  if (one === undefined) throw new Error('There is nothing to choose from.')
  return one
}

const aLength = (job: Job, chance: Chance): Job['dimensions'][number] =>
  oneOf(
    job.dimensions.filter(({ kind }) => kind === 'length'),
    chance,
  )

/** A place on a sheet that no other pick of these tests has. */
const anywhere = (chance: Chance): Pixel => pixel(20 + chance(360_000) / 1000, 20 + chance(260_000) / 1000)

function picked(need: MarkNeed, chance: Chance): PickedMark {
  const pixels = Array.from({ length: FEWEST_PICKS[need] }, () => anywhere(chance))
  const mark = markByHand(
    need,
    pixels,
    pixels.map(() => 1),
  )
  if ('refused' in mark) throw new Error(inWords(mark.refused))
  return mark
}

function edit(made: Made): Edit {
  if ('refused' in made) throw new Error(inWords(made.refused))
  return made.edit
}

function picksOf(job: Job, measure: Measure, chance: Chance) {
  const need = MEASURE_NEEDS[measure][0] ?? []
  return { view: oneOf(job.views, chance).id, measure, marks: need.map((one) => picked(one, chance)) }
}

function drafted(draft: EvidenceDraft, job: Job, dimension: Job['dimensions'][number], mint: Mint): Edit {
  const made = draftedEvidence(draft, dimension, job, { unit: job.unit, mint })
  if (made === null || !('edit' in made)) throw new Error('The draft is evidence.')
  return made.edit
}

/** Ways in which a window adds to a job that has a sheet, a view and a length; each gives an edit. */
export const WAYS_OF_A_WINDOW: readonly ((job: Job, mint: Mint, chance: Chance) => Edit)[] = [
  (job, mint, chance) => {
    const sheet = oneOf(job.sheets, chance)
    const outline = outlineBetween(anywhere(chance), anywhere(chance), sheet.scan)
    return addView(job, { sheet: sheet.id, name: `View ${chance(1e9)}`, outline }, mint).edit
  },
  (job, mint, chance) => {
    const marks = [picked('point', chance), picked('point', chance)]
    return edit(addKnownSize(job, oneOf(job.views, chance), marks, { size: '12"' }, mint))
  },
  (job, mint, chance) => {
    const marks = [picked('circle', chance)]
    return edit(addKnownSize(job, oneOf(job.views, chance), marks, { size: '3"' }, mint))
  },
  (job, mint, chance) => {
    const corners = Array.from({ length: 4 }, () => picked('point', chance))
    const size = { width: '6"', height: '4"' }
    return edit(addKnownSize(job, oneOf(job.views, chance), corners, size, mint))
  },
  (job, mint, chance) => {
    const name = `size_${job.dimensions.length}_${chance(1_000_000)}`
    const measure = oneOf(MEASURES, chance)
    return edit(addDimension(job, picksOf(job, measure, chance), { name, label: name, count: 1 }, mint))
  },
  (job, mint, chance) => {
    const { name } = aLength(job, chance)
    return edit(addScaledEvidence(job, picksOf(job, 'distance', chance), name, mint))
  },
  (job, mint, chance) => {
    const outline = outlineBetween(anywhere(chance), anywhere(chance), oneOf(job.sheets, chance).scan)
    return addNote(job, { sheet: oneOf(job.sheets, chance).id, outline, text: `Note ${chance(1e6)}` }, mint)
      .edit
  },
  (job, mint, chance) => {
    const length = aLength(job, chance)
    const drafts: EvidenceDraft[] = [
      { basis: 'printed', text: `${1 + chance(40)} 3/8"`, legibility: 'clear', sheet: null },
      { basis: 'found', readings: `${1 + chance(40)}.25 in\n${1 + chance(40)}.5 in`, instrument: null },
      { basis: 'derived', formula: `${1 + chance(9)} in` },
    ]
    return drafted(oneOf(drafts, chance), job, length, mint)
  },
  (job, mint, chance) => {
    const annotation = {
      '@context': 'http://www.w3.org/ns/anno.jsonld',
      id: `http://example.org/${chance(1e9)}`,
      type: 'Annotation',
      bodyValue: `From elsewhere ${chance(1e9)}`,
      creator: { type: 'Person', name: oneOf(['E. Crank', 'F. Pawl', 'G. Stay'], chance) },
      target: niUri(oneOf(job.sheets, chance).scan.sha256),
    }
    const { edits } = fromWebAnnotations(JSON.stringify(annotation), job, { mint })
    return { do: 'several', name: 'bring in one note', edits }
  },
]

/** Ways in which edits are written by hand, without ids for what they add. */
export const WAYS_BY_HAND: readonly ((job: Job, chance: Chance) => object)[] = [
  (_, chance) => ({ do: 'add-person', item: { name: `H. Gudgeon ${chance(1e9)}` } }),
  (_, chance) => ({
    do: 'add-instrument',
    item: { name: `${chance(60)} in rule`, resolution: '1/64"' },
  }),
  (job, chance) => ({
    do: 'add-relation',
    item: { text: `${aLength(job, chance).name} = ${aLength(job, chance).name}` },
  }),
  (job, chance) => ({
    do: 'add-note',
    item: { sheet: oneOf(job.sheets, chance).id, outline: [], text: `By hand ${chance(1e9)}` },
  }),
  (job, chance) => ({
    do: 'several',
    name: 'a view with a figured size',
    edits: [
      ...['new:one', 'new:another'].map((id) => ({
        do: 'add-mark',
        item: {
          id,
          sheet: job.sheets[0]?.id,
          how: 'hand',
          sigma: 1,
          kind: 'point',
          pixel: anywhere(chance),
        },
      })),
      {
        do: 'add-view',
        item: {
          id: 'new:view',
          sheet: job.sheets[0]?.id,
          name: `By hand ${chance(1e9)}`,
          mapping: 'uniform',
          references: [{ kind: 'distance', marks: ['new:one', 'new:another'], size: '5 in' }],
        },
      },
      {
        do: 'add-dimension',
        item: {
          name: `by_hand_${chance(1e9)}`,
          label: 'By hand',
          kind: 'length',
          evidence: [
            { basis: 'scaled', view: 'new:view', measure: 'distance', marks: ['new:one', 'new:another'] },
            { basis: 'printed', text: '5"' },
          ],
        },
      },
    ],
  }),
]

/** Every id in a job, of what goes by one. */
export const idsIn = (job: Job): string[] => [
  ...[job.people, job.instruments, job.sheets, job.views, job.marks, job.relations, job.notes].flatMap(
    (list) => list.map(({ id }) => id),
  ),
  ...job.views.flatMap(({ references }) => references.map(({ id }) => id)),
  ...job.dimensions.flatMap(({ evidence }) => evidence.map(({ id }) => id)),
]

/** The ids of a job that another does not have. */
export function idsSince(before: Job, after: Job): Set<string> {
  const old = new Set(idsIn(before))
  return new Set(idsIn(after).filter((id) => !old.has(id)))
}
