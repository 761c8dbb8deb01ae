import { type Degrees, degrees } from '../../../core/geometry/angle-units.ts'
import { type LevelLine, levelLine } from '../../../core/job/from-picks/straighten-sheet.ts'
import type { Mark } from '../../../core/job/model/types.ts'
import { firstPlaces } from '../../../core/job/picks/picks-of.ts'
import type { Aids } from '../../looking/aids.ts'
import type { Picks } from '../../picking/picks.ts'
import { attempted } from '../../words/refusal.ts'
import { plainTurn } from './turn.ts'

/** The line that was picked to straighten by; null while there is none that has a direction, or its stroke is looked for. */
export function pickedLine({ tool, features }: Picks, marks: readonly Mark[]): LevelLine | null {
  const [feature] = features
  if (tool.kind !== 'straighten' || feature === undefined || !feature.done) return null
  if ('mark' in feature) {
    const mark = marks.find(({ id }) => id === feature.mark)
    return mark?.kind === 'line' ? lineThrough(firstPlaces(mark), mark.sigma, mark.how) : null
  }
  const { stroke, pixels, sigmas } = feature
  if (stroke?.state === 'looking') return null
  if (stroke?.state === 'found') return lineThrough(firstPlaces(stroke.mark), stroke.mark.sigma, 'stroke')
  return lineThrough(pixels, Math.max(...sigmas), 'hand')
}

/** Null for what has no direction. */
function lineThrough(...line: Parameters<typeof levelLine>): LevelLine | null {
  const came = attempted(() => levelLine(...line))
  return 'done' in came ? came.done : null
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

/** An angle to a hundredth of a degree, `3.27° clockwise`. */
export function slopeInWords(slope: Degrees): string {
  const size = Math.abs(slope).toFixed(2)
  return Number(size) === 0 ? 'level' : `${size}° ${slope > 0 ? 'clockwise' : 'anticlockwise'}`
}

/** A standard uncertainty to two figures, `0.012°`. */
export const uncertaintyInWords = (u: Degrees): string => `${Math.max(u, 1e-4).toPrecision(2)}°`
