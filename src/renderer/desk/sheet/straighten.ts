import { type Degrees, degrees, radians, toDegrees } from '../../../core/geometry/angle-units.ts'
import { fitLine } from '../../../core/geometry/fit-line.ts'
import type { Pixel } from '../../../core/geometry/frames.ts'
import { GeometryError } from '../../../core/geometry/geometry-error.ts'
import type { Edit } from '../../../core/job/edits/edit.ts'
import { pixelsOf } from '../../../core/job/from-picks/picked-mark.ts'
import type { Job, Mark } from '../../../core/job/model/types.ts'
import type { Aids } from '../../looking/aids.ts'
import type { Picks } from '../../picking/picks.ts'
import { plainTurn } from './turn.ts'

/** A line on the scan. */
interface LevelLine {
  /** Of its direction in the pixels of the scan, clockwise from right. */
  angle: Degrees
  /** Its standard uncertainty. */
  u: Degrees
  how: Mark['how']
}

/** The line that was picked to straighten by; null while there is none that has a direction, or its stroke is looked for. */
export function pickedLine({ tool, features }: Picks, marks: readonly Mark[]): LevelLine | null {
  const [feature] = features
  if (tool.kind !== 'straighten' || feature === undefined || !feature.done) return null
  if ('mark' in feature) {
    const mark = marks.find(({ id }) => id === feature.mark)
    return mark?.kind === 'line' ? lineThrough(mark.pixels, mark.sigma, mark.how) : null
  }
  const { stroke, pixels, sigmas } = feature
  if (stroke?.state === 'looking') return null
  if (stroke?.state === 'found') return lineThrough(pixelsOf(stroke.mark), stroke.mark.sigma, 'stroke')
  return lineThrough(pixels, Math.max(...sigmas), 'hand')
}

/** @param sigma standard uncertainty of each pixel across the line */
function lineThrough(pixels: readonly Pixel[], sigma: number, how: Mark['how']): LevelLine | null {
  try {
    const { direction, rotation } = fitLine(pixels)
    return {
      angle: toDegrees(radians(Math.atan2(direction[1], direction[0]))),
      u: toDegrees(radians(rotation * sigma)),
      how,
    }
  } catch (error) {
    if (error instanceof GeometryError) return null
    throw error
  }
}

/**
 * What a line says of the sheet that it is on: the direction of the sheet's horizontal edge in pixels. The line
 * is taken for level or for upright, whichever it is nearer to as the sheet is looked at.
 */
export function straightBy(angle: Degrees, { turn, mirror }: Aids): Degrees {
  const seen = mirror ? turn + 180 - angle : turn + angle
  const rest = seen - 90 * Math.round(seen / 90)
  return plainTurn(degrees(mirror ? turn - rest : rest - turn))
}

/** Straightens a sheet, as one edit. The grain of all its views follows. */
export function straightenEdit(job: Job, sheet: string, straight: Degrees): Edit {
  const views = job.views.filter((view) => view.sheet === sheet)
  return {
    do: 'several',
    name: `straighten sheet ${sheet}`,
    edits: [
      { do: 'change-sheet', id: sheet, set: { straight } },
      ...views.map(({ id }): Edit => ({ do: 'change-view', id, set: { grain: straight } })),
    ],
  }
}

/** Takes back how a sheet was straightened, as one edit, with the grain of those views that still follow it. */
export function unstraightenEdit(job: Job, sheet: string): Edit {
  const straight = job.sheets.find(({ id }) => id === sheet)?.straight
  const views = job.views.filter((view) => view.sheet === sheet && view.grain === straight)
  return {
    do: 'several',
    name: `take back the straightening of sheet ${sheet}`,
    edits: [
      { do: 'change-sheet', id: sheet, clear: ['straight'] },
      ...views.map(({ id }): Edit => ({ do: 'change-view', id, clear: ['grain'] })),
    ],
  }
}

/** An angle to a hundredth of a degree, `3.27° clockwise`. */
export function slopeInWords(slope: Degrees): string {
  const size = Math.abs(slope).toFixed(2)
  return Number(size) === 0 ? 'level' : `${size}° ${slope > 0 ? 'clockwise' : 'anticlockwise'}`
}

/** A standard uncertainty to two figures, `0.012°`. */
export const uncertaintyInWords = (u: Degrees): string => `${Math.max(u, 1e-4).toPrecision(2)}°`
