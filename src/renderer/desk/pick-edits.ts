import type { Pixel } from '../../core/geometry/frames.ts'
import type { Edit } from '../../core/job/edit-types.ts'
import { kindOfMeasure } from '../../core/job/mark-needs.ts'
import type { Evidence, Job, Mark, Reference, View } from '../../core/job/types.ts'
import { evidenceId } from '../bench/evidence-id.ts'
import type { PickedFeature, Picks } from '../picking/picks.ts'
import { freshId, freshIds } from './fresh-id.ts'

type NewFeature = Extract<PickedFeature, { pixels: Pixel[] }>

/** A thousandth of a pixel is far below what a hand can pick, and keeps the job readable. */
const tidy = ([x, y]: Pixel): Pixel => [Math.round(x * 1000) / 1000, Math.round(y * 1000) / 1000]

/** A new mark, as good as the worst of its picks. */
function newMark(id: string, sheet: string, { need, pixels, sigmas }: NewFeature): Mark {
  const sigma = Math.round(Math.max(...sigmas) * 10) / 10
  const base = { id, sheet, how: 'hand' as const, sigma }
  const tidied = pixels.map(tidy)
  switch (need) {
    case 'point':
      return { ...base, kind: 'point', pixel: tidied[0] ?? [0, 0] }
    case 'line':
    case 'circle':
      return { ...base, kind: need, pixels: tidied }
    case 'path':
      return { ...base, kind: 'path', pixels: tidied }
    case 'closed path':
      return { ...base, kind: 'path', pixels: tidied, closed: true }
  }
}

/** The marks of picks: edits that add the new ones, and the ids of all in the order that they were picked. */
function marksOfPicks(job: Job, sheet: string, picks: Picks): { edits: Edit[]; ids: string[] } {
  const fresh = freshIds(
    'M',
    job.marks.map(({ id }) => id),
    picks.features.length,
  )
  const edits: Edit[] = []
  const ids = picks.features.map((feature) => {
    if ('mark' in feature) return feature.mark
    const id = fresh[edits.length] ?? ''
    edits.push({ do: 'add-mark', item: newMark(id, sheet, feature) })
    return id
  })
  return { edits, ids }
}

/** A known size as it was written down. */
export type KnownSize = { u?: string } & ({ size: string } | { width: string; height: string })

function reference(id: string, ids: readonly string[], size: KnownSize): Reference {
  const [a = '', b = '', c = '', d = ''] = ids
  const u = size.u === undefined ? {} : { u: size.u }
  if ('width' in size) {
    return { id, kind: 'rectangle', marks: [a, b, c, d], width: size.width, height: size.height, ...u }
  }
  if (ids.length === 1) return { id, kind: 'diameter', marks: [a], size: size.size, ...u }
  return { id, kind: 'distance', marks: [a, b], size: size.size, ...u }
}

/** Adds a known size with its marks to a view, as one edit. */
export function referenceEdit(
  job: Job,
  view: View,
  picks: Picks,
  size: KnownSize,
): { edit: Edit; id: string } {
  const { edits, ids } = marksOfPicks(job, view.sheet, picks)
  const id = freshId(
    'R',
    view.references.map((one) => one.id),
  )
  const item = reference(id, ids, size)
  return {
    id,
    edit: {
      do: 'several',
      name: `add known size ${id}`,
      edits: [...edits, { do: 'add-reference', view: view.id, item }],
    },
  }
}

/** Picks with a tool that measures. */
export type MeasurePicks = Picks & { tool: { kind: 'measure' } }

export const isMeasure = (picks: Picks): picks is MeasurePicks => picks.tool.kind === 'measure'

function scaled(id: string, picks: MeasurePicks, marks: string[]): Evidence {
  return { id, basis: 'scaled', view: picks.tool.view, measure: picks.tool.measure, marks }
}

const sheetOf = (job: Job, picks: MeasurePicks): string =>
  job.views.find(({ id }) => id === picks.tool.view)?.sheet ?? ''

/** Adds what was measured as a dimension of its own, with its marks, as one edit. */
export function dimensionEdit(
  job: Job,
  picks: MeasurePicks,
  { name, label, count }: { name: string; label: string; count: number },
): Edit {
  const { edits, ids } = marksOfPicks(job, sheetOf(job, picks), picks)
  return {
    do: 'several',
    name: `add dimension ${name}`,
    edits: [
      ...edits,
      {
        do: 'add-dimension',
        item: {
          name,
          label,
          kind: kindOfMeasure(picks.tool.measure),
          ...(count === 1 ? {} : { count }),
          evidence: [scaled(evidenceId([], 'scaled'), picks, ids)],
        },
      },
    ],
  }
}

/** Adds what was measured to a dimension as further evidence, with its marks, as one edit. */
export function evidenceEdit(job: Job, picks: MeasurePicks, dimension: string): Edit {
  const { edits, ids } = marksOfPicks(job, sheetOf(job, picks), picks)
  const evidence = job.dimensions.find(({ name }) => name === dimension)?.evidence ?? []
  const item = scaled(evidenceId(evidence, 'scaled'), picks, ids)
  return {
    do: 'several',
    name: `add scaled evidence to ${dimension}`,
    edits: [...edits, { do: 'add-evidence', dimension, item }],
  }
}

/** The outline that two opposite corners give, kept on its page; null before both are picked. */
export function outlineOf(picks: Picks, page: { width: number; height: number }): Pixel[] | null {
  const corners = picks.features.flatMap((feature) => ('pixels' in feature ? feature.pixels : []))
  const [a, b] = corners
  if (a === undefined || b === undefined) return null
  const held = (value: number, most: number): number => Math.round(Math.min(most, Math.max(0, value)))
  const [left, right] = [a[0], b[0]].map((x) => held(x, page.width)).sort((p, q) => p - q) as [number, number]
  const [top, bottom] = [a[1], b[1]].map((y) => held(y, page.height)).sort((p, q) => p - q) as [
    number,
    number,
  ]
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ]
}

/** Adds a view inside an outline. */
export function viewEdit(
  job: Job,
  view: { sheet: string; name: string; outline: Pixel[]; drawnScale?: number },
): { edit: Edit; id: string } {
  const id = freshId(
    'V',
    job.views.map((one) => one.id),
  )
  return { id, edit: { do: 'add-view', item: { id, ...view, mapping: 'two-axis', references: [] } } }
}
