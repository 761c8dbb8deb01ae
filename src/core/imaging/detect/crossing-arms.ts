import { type Pixel, pixel } from '../../geometry/frames.ts'
import type { NoStrokeReason, ProfileReason } from '../../words/strokes.ts'
import type { AcceptedStroke, Demands } from '../accept/acceptance.ts'
import { reachAcross } from '../filter/bar-grid.ts'
import { OrientedFilter } from '../filter/oriented-filter.ts'
import { parallelRidges, type Ridge } from '../filter/ridge-score.ts'
import { straightCurve } from '../strip/reference-curve.ts'
import { piecesFor } from '../strip/strip.ts'
import { isReason, type SearchContext } from './detector.ts'
import { alongMiddle, settleStraight, straightSearch } from './straight-stroke.ts'

/** How far arms go that are looked for, pixels. */
export interface ArmScale {
  /** From this far to this far from the place: from below 0 they go through it. */
  from: number
  to: number
  piece: number
  widest: number
  /** Length that must show a stroke, and share of its pieces. */
  demands: Demands
}

/** Long ones first, of any meeting; then short ones that go through: centre lines that hardly leave a small hole. */
export const ARM_SCALES: readonly ArmScale[] = [
  { from: 7, to: 39, piece: 4, widest: 19, demands: { share: 0.3, length: 12 } },
  { from: -20, to: 20, piece: 2.5, widest: 6, demands: { share: 0.3, length: 8 } },
  { from: -12, to: 12, piece: 2, widest: 4, demands: { share: 0.3, length: 7 } },
]
const ARMS = 48
const STRONG = 5.5
const MOST_ARMS = 7
/** Arms that have settled so near to one another are one: cosine of the angle between them, and pixels. */
const SAME_WAY = Math.cos((3 * Math.PI) / 180)
const SAME_FOOT = 1

/** A straight stroke, or half of one, near the place: a line, and from where to where it was seen along it. */
export interface Arm {
  /** Foot of the place on its centreline. */
  foot: Pixel
  /** Radians; the stroke is told along it from the place. */
  direction: number
  from: number
  to: number
  /** Where it was first seen, whatever touches it there, along it from the place. */
  begins: number
  width: number
  contrast: number
  strength: number
  scale: ArmScale
}

interface SeenArm {
  direction: number
  offset: number
  ridge: Ridge
}

export const unit = (direction: number): Pixel => pixel(Math.cos(direction), Math.sin(direction))

/** Straight ways that start near a place and look like strokes, each settled by a fit. */
export function armsAt(context: SearchContext, at: Pixel, scale: ArmScale): Arm[] {
  const apart: SeenArm[] = []
  for (const arm of seenArms(context, at, scale).sort((a, b) => b.ridge.strength - a.ridge.strength)) {
    if (apart.length >= MOST_ARMS) break
    if (apart.every((a) => areApart(a, arm))) apart.push(arm)
  }
  const strongest = Math.abs(apart[0]?.ridge.contrast ?? 0)
  const arms: Arm[] = []
  for (const seen of apart) {
    if (Math.abs(seen.ridge.contrast) <= 0.25 * strongest) continue
    const arm = settledArm(context, at, seen, scale)
    if (arm !== null && !arms.some((stronger) => isSameArm(stronger, arm))) arms.push(arm)
  }
  return arms
}

/** Whether two arms that were seen along different ways have settled on one stroke. */
function isSameArm(a: Arm, b: Arm): boolean {
  const turn = Math.cos(a.direction - b.direction)
  return turn > SAME_WAY && Math.hypot(a.foot[0] - b.foot[0], a.foot[1] - b.foot[1]) < SAME_FOOT
}

function seenArms(
  { grey, noise, reach, ink }: SearchContext,
  at: Pixel,
  { from, to, piece, widest }: ArmScale,
): SeenArm[] {
  const length = to - from
  const count = Math.round(length / piece)
  const most = Math.ceil(reach + 4)
  const strengths = new Float64Array(2 * most + 1)
  const filter = new OrientedFilter(grey, {
    from,
    count,
    size: length / count,
    half: reachAcross(reach, widest),
    mostOf: () => most,
    widest,
  })
  const ways = from < 0 ? ARMS / 2 : ARMS
  return Array.from({ length: ways }, (_, i) => (2 * Math.PI * i) / ARMS).flatMap((direction) => {
    const grid = filter.along(at, direction)
    return parallelRidges({ grid, length, noise, ink }, most, strengths).flatMap((ridge) =>
      ridge !== null && ridge.strength > STRONG ? [{ direction, offset: ridge.steer[0] ?? 0, ridge }] : [],
    )
  })
}

function areApart(a: SeenArm, b: SeenArm): boolean {
  const turn = Math.abs(Math.atan2(Math.sin(a.direction - b.direction), Math.cos(a.direction - b.direction)))
  return turn > 0.3 || (Math.abs(a.offset - b.offset) > a.ridge.width / 2 + 5 && turn < 0.15)
}

/** An arm with its place and direction settled by a fit; null when it does not settle. */
function settledArm(
  context: SearchContext,
  at: Pixel,
  { direction, offset, ridge }: SeenArm,
  scale: ArmScale,
): Arm | null {
  const [dx, dy] = unit(direction)
  const place = (along: number): Pixel =>
    pixel(at[0] + along * dx - offset * dy, at[1] + along * dy + offset * dx)
  const { from, to } = scale
  const settled = settleAlong(context, [place(from), place(to)], ridge, scale)
  if (isReason(settled)) return null
  const { strip, fit, judged } = settled.traced
  const [shiftStart = 0, shiftEnd = 0] = fit.parameters
  const start = strip.curve.place(0, shiftStart)
  const end = strip.curve.place(strip.curve.length, shiftEnd)
  const turned = Math.atan2(end[1] - start[1], end[0] - start[0])
  const [ux, uy] = unit(turned)
  const along = (at[0] - start[0]) * ux + (at[1] - start[1]) * uy
  const foot: Pixel = pixel(start[0] + along * ux, start[1] + along * uy)
  const { width, contrast } = fit
  const first = judged.because.findIndex((why) => why?.code !== 'profile.beyond-end')
  const begins = from + (strip.pieces[Math.max(0, first)]?.from ?? 0)
  return { foot, direction: turned, from, to, begins, width, contrast, strength: ridge.strength, scale }
}

/** Traces the straight stroke that runs from near one place to near another and looks like this. */
export function settleAlong(
  context: SearchContext,
  [from, to]: readonly [Pixel, Pixel],
  { width, contrast }: Pick<Ridge, 'width' | 'contrast'>,
  { piece, demands }: ArmScale,
  barred: readonly (ProfileReason | undefined)[] = [],
): AcceptedStroke | NoStrokeReason {
  const curve = straightCurve(from, to)
  const search = straightSearch(context, curve, {
    count: piecesFor(curve.length, piece),
    half: reachAcross(3, Math.min(1.5 * width + 2, 40)),
    widest: 1.5 * width + 1,
    demands,
    barred,
  })
  return settleStraight(search, alongMiddle(width, contrast))
}
