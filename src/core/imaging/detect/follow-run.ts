import type { Circle } from '../../geometry/circle-through.ts'
import type { Pixel } from '../../geometry/frames.ts'
import { circleOrNone } from '../fit/circle-or-none.ts'
import type { ReferenceCurve } from '../strip/reference-curve.ts'
import { isCovered, stripAlong } from '../strip/strip.ts'
import { type Traced, traceStroke } from '../trace/trace-stroke.ts'
import type { GreyPicture } from '../window/grey-picture.ts'

/** Where at least this share of the pieces shows the stroke, it cannot have gone over to another half way. */
const WHOLE = 0.75
/** Of fewer pieces in a row no circle is made out. */
const LEAST_RUN = 4
/** A run that shows by this factor more, followed by itself, is of another stroke than the way as a whole. */
const CLEARLY_MORE = 1.2
/** Of ground beside the stroke, pixels. */
const BESIDE = 9

/**
 * A round way between two strokes about one centre lies on the one on this side and on the other on that: it is neither.
 * Where hardly more than half of a way shows a stroke, its longest run of pieces is followed by itself.
 * @param along the curve to be looked at about a circle
 * @returns what the run is a part of, when that shows clearly more of a stroke than the way did; else the way
 */
export function followRun(grey: GreyPicture, way: Traced, along: (circle: Circle) => ReferenceCurve): Traced {
  const shown = shareOf(way)
  if (shown >= WHOLE) return way
  const run = longestRun(way)
  const circle = run.length < LEAST_RUN ? null : circleOrNone(run)
  if (circle === null) return way
  const onto = along(circle)
  const { width, contrast } = way.fit
  const half = width / 2 + BESIDE
  const strip = stripAlong(grey, onto, way.strip.pieces.length, -half, Math.min(half, circle.radius - 1))
  const near = onto.length / strip.pieces.length
  const offsets = strip.pieces.map(({ middle }) => {
    const [x, y] = onto.place(middle, 0)
    return run.some((at) => Math.hypot(at[0] - x, at[1] - y) < near) ? { offset: 0, turn: 0 } : null
  })
  const followed = traceStroke(grey, { strip, offsets, width, contrast, onto, half })
  if (followed === null || followed.fit.contrast * contrast < 0) return way
  return shareOf(followed) > CLEARLY_MORE * shown ? followed : way
}

/** The share of the pieces in the picture that show the stroke. */
const shareOf = ({ strip, judged }: Traced): number =>
  judged.kept.filter(Boolean).length / strip.pieces.filter(isCovered).length

/** The centres of the most pieces in a row that show the stroke. */
function longestRun({ strip, centres, judged }: Traced): Pixel[] {
  let longest: Pixel[] = []
  let run: Pixel[] = []
  // Twice about: a run may go on beyond where a whole circle begins.
  const count = strip.pieces.length
  for (let i = 0; i < 2 * count && run.length < count; i++) {
    const [piece, centre] = [strip.pieces[i % count], centres[i % count]]
    if (i === count && !isWhole(strip.curve)) break
    if (piece && centre && judged.kept[i % count]) run.push(strip.curve.place(piece.middle, centre.offset))
    else run = []
    if (run.length > longest.length) longest = [...run]
  }
  return longest
}

const isWhole = ({ length, curvature }: ReferenceCurve): boolean =>
  length * Math.abs(curvature) > 2 * Math.PI - 1e-6
