import { guessAt } from '../fit/strip-equations.ts'
import { type AlignedProfile, alignedProfile } from '../strip/aligned-profile.ts'
import { stripAlong } from '../strip/strip.ts'
import type { Traced } from '../trace/trace-stroke.ts'
import type { GreyPicture } from '../window/grey-picture.ts'
import type { Ink } from '../window/ink.ts'

/** Columns of a profile a pixel. */
const PER_PIXEL = 2
/** Paper is looked at beyond what lies beside it, pixels. */
const BEYOND = 3

/**
 * Whether what was traced is the paper between two strokes: unlike the ink here, and on both sides what was taken for its
 * ground is narrower than it is itself, and has the same again beyond. A light stroke across a dark area has that area on
 * one side at least; the paper between two strokes side by side has not.
 * @param ink what is ink here
 */
export function isPaperBetween(grey: GreyPicture, { strip, fit, judged }: Traced, ink: Ink): boolean {
  if (fit.contrast < 0 === (ink === 'dark')) return false
  const { curve, pieces } = strip
  const far = 1.5 * fit.width + BEYOND
  const inwards = curve.curvature === 0 ? far : Math.min(far, 1 / Math.abs(curve.curvature) - 1)
  const wide = stripAlong(grey, curve, pieces.length, -far, inwards)
  const ways = wide.pieces.map((piece, k) => (judged.kept[k] ? guessAt(piece, fit) : null))
  const profile = alignedProfile(wide, ways, far)
  return ([-1, 1] as const).every((way) => besideOf(profile, fit.contrast, way) < fit.width)
}

/** How wide is what lies beside a band to one side, pixels; without end when the profile ends before it does. */
function besideOf({ low, value }: AlignedProfile, contrast: number, way: -1 | 1): number {
  // Across a level stroke every other column is empty: those are passed over.
  const columns = Array.from(value, (grey, i) => ({ grey, across: low + i / PER_PIXEL })).filter(
    ({ grey, across }) => !Number.isNaN(grey) && way * across >= 0,
  )
  if (way < 0) columns.reverse()
  const inside = columns[0]?.grey ?? Number.NaN
  const isBand = (grey: number): boolean => (grey - inside) / contrast > -0.5
  const edge = columns.findIndex(({ grey }) => !isBand(grey))
  const back = columns.findIndex(
    ({ grey }, i) => i > edge && isBand(grey) && isBand(columns[i + 1]?.grey ?? Number.NaN),
  )
  const [from, to] = [columns[edge], columns[back]]
  return from === undefined || to === undefined ? Number.POSITIVE_INFINITY : Math.abs(to.across - from.across)
}
