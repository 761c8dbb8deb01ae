import { type Pixel, pixel } from '../../core/geometry/frames.ts'
import type { Edit } from '../../core/job/edits/edit.ts'
import { kindOfMeasure } from '../../core/job/model/mark-needs.ts'
import type { Evidence, Job, Mark, Reference, View } from '../../core/job/model/types.ts'
import { evidenceId } from '../bench/evidence-id.ts'
import type { Fitted } from '../picking/fitted.ts'
import { fittedOf, HAND_SIGMA, type NewFeature, type Picks } from '../picking/picks.ts'
import { freshId, freshIds } from './fresh-id.ts'

/** A thousandth of a pixel is far below what a hand can pick, and keeps the job readable. */
const tidy = ([x, y]: Pixel): Pixel => pixel(Math.round(x * 1000) / 1000, Math.round(y * 1000) / 1000)

/** A new mark: what was found on the stroke, or else as good as the worst of its picks. */
function newMark(id: string, sheet: string, feature: NewFeature): Mark {
  const { need, sigmas } = feature
  const fitted = fittedOf(feature)
  const base =
    fitted === null
      ? { id, sheet, how: 'hand' as const, sigma: Math.round(Math.max(...sigmas) * 10) / 10 }
      : { id, sheet, how: 'stroke' as const, sigma: fitted.sigma, stroke: fitted.stroke }
  const pixels = (fitted?.pixels ?? feature.pixels).map(tidy)
  switch (need) {
    case 'point': {
      const covariance = fitted?.covariance
      const point = { ...base, kind: 'point' as const, pixel: pixels[0] ?? (pixel(0, 0) as Pixel) }
      return covariance === undefined ? point : { ...point, covariance }
    }
    case 'line':
    case 'circle':
      return { ...base, kind: need, pixels }
    case 'path':
      return { ...base, kind: 'path', pixels }
    case 'closed path':
      return { ...base, kind: 'path', pixels, closed: true }
  }
}

/** One more pick of a mark; null before it is picked, or where no stroke was found for a mark that is on one. */
export function repeatEdit(mark: Mark, picks: Picks): Edit | null {
  const [feature] = picks.features
  if (picks.tool.kind !== 'repeat' || feature === undefined || !('pixels' in feature) || !feature.done)
    return null
  const fitted = fittedOf(feature)
  if (mark.how === 'stroke' && mark.stroke !== undefined && fitted === null) return null
  const pixels = (fitted?.pixels ?? feature.pixels).map(tidy)
  const [pixel] = pixels
  if (mark.kind !== 'point') return { do: 'repeat-pick', mark: mark.id, pixels }
  return pixel === undefined ? null : { do: 'repeat-pick', mark: mark.id, pixel }
}

/** A mark as it was found anew on its stroke. What was picked again belongs to what was found before, so it goes. */
export function refoundEdit(mark: Mark, fitted: Fitted): Edit {
  const { sigma, stroke, covariance } = fitted
  const place = mark.kind === 'point' ? { pixel: fitted.pixels[0] ?? mark.pixel } : { pixels: fitted.pixels }
  const set = {
    how: 'stroke' as const,
    ...place,
    sigma,
    stroke,
    ...(covariance === undefined ? {} : { covariance }),
  }
  const gone = covariance === undefined ? ['repeats', 'repeatedBy', 'covariance'] : ['repeats', 'repeatedBy']
  return {
    do: 'several',
    name: `find mark ${mark.id} again`,
    edits: [{ do: 'change-mark', id: mark.id, set, clear: gone.filter((field) => field in mark) }],
  }
}

/** A mark put back to where the hand pointed, as good as a hand is. */
export function byHandEdit(mark: Mark): Edit | null {
  const rough = mark.stroke?.rough ?? []
  const [pixel] = rough
  if (pixel === undefined) return null
  const set = {
    how: 'hand' as const,
    sigma: HAND_SIGMA,
    ...(mark.kind === 'point' ? { pixel } : { pixels: rough }),
  }
  const clear = ['stroke', 'covariance', 'repeats', 'repeatedBy'].filter((field) => field in mark)
  return {
    do: 'several',
    name: `pick mark ${mark.id} by hand`,
    edits: [{ do: 'change-mark', id: mark.id, set, clear }],
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
  return [pixel(left, top), pixel(right, top), pixel(right, bottom), pixel(left, bottom)]
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
  const straight = job.sheets.find((sheet) => sheet.id === view.sheet)?.straight
  const grain = straight === undefined ? {} : { grain: straight }
  return {
    id,
    edit: { do: 'add-view', item: { id, ...view, mapping: 'two-axis', ...grain, references: [] } },
  }
}
