import { type Pixel, pixel } from '../../geometry/frames.ts'
import { reason } from '../../words/core-words.ts'
import type { NoStrokeReason } from '../../words/strokes.ts'
import type { AcceptedStroke } from '../accept/acceptance.ts'
import { piecesFor } from '../strip/strip.ts'
import { ARM_SCALES, type Arm, type ArmScale, armsAt, settleAlong, unit } from './crossing-arms.ts'
import { detect, isReason, type SearchContext } from './detector.ts'
import { joinArms } from './join-arms.ts'

/** Strokes nearer in direction than this do not fix where they cross, radians. */
const LEAST_ANGLE = 0.2
const MOST_PAIRS = 3
/** Arms are followed to here at the most, pixels from the place. */
const FARTHER = 70
/** A stroke is first seen by itself so far from the edge of the one that it meets, pixels. */
const LEAVES = 6
/** Places that lie so far apart are aimed at alike, pixels. */
const AS_NEAR = 1
/** No more of an arm than this share of what is looked at is left out beside the other stroke. */
const MOST_BESIDE = 25 / 39

/** Two arms or strokes that cross, and where. */
interface CrossingPair {
  strokes: [Arm, Arm]
  crossing: Pixel
  /** From where it is looked for, pixels. */
  away: number
}

/** The two strokes that cross or meet nearest to the place, each traced with the neighbourhood of the crossing left out. */
export function detectCrossing(
  context: SearchContext,
  at: Pixel,
): [AcceptedStroke, AcceptedStroke] | NoStrokeReason {
  return detect<CrossingPair, [AcceptedStroke, AcceptedStroke], [AcceptedStroke, AcceptedStroke]>({
    *propose() {
      for (const scale of ARM_SCALES) yield* nearestPairs(armsOf(context, at, scale), at, context.reach)
    },
    refine({ strokes: [a, b], crossing }) {
      const first = traceFarEnough(context, a, b, crossing)
      const second = traceFarEnough(context, b, a, crossing)
      return isReason(first) ? first : isReason(second) ? second : [first, second]
    },
    // Each of the two has been accepted by itself.
    accept: (both) => both,
    nothing: reason('stroke.no-crossing-within', { reach: context.reach }),
  })
}

function armsOf(context: SearchContext, at: Pixel, scale: ArmScale): Arm[] {
  const arms = armsAt(context, at, scale)
  return scale.from < 0 ? arms : joinArms(arms)
}

function nearestPairs(arms: readonly Arm[], at: Pixel, reach: number): CrossingPair[] {
  const pairs = arms.flatMap((a, i) =>
    arms.slice(i + 1).flatMap((b): CrossingPair[] => {
      const crossing = crossingOf(a, b)
      if (crossing === null) return []
      const away = Math.hypot(crossing[0] - at[0], crossing[1] - at[1])
      return away <= reach + Math.max(a.width, b.width) / 2 ? [{ strokes: [a, b], crossing, away }] : []
    }),
  )
  // Extension lines go on beyond a corner after a gap, and cross near it too: where strokes meet, they are not meant.
  const meeting = pairs.filter(meet)
  return (meeting.length > 0 ? meeting : pairs)
    .sort((p, q) => nearness(p) - nearness(q) || strengthOf(q) - strengthOf(p))
    .slice(0, MOST_PAIRS)
}

/** How far it is aimed beside where both strokes lie on one another, in steps that a hand can't tell. */
const nearness = ({ away, strokes: [a, b] }: CrossingPair): number =>
  Math.floor(Math.max(0, away - Math.min(a.width, b.width) / 2) / AS_NEAR)

/** Whether both strokes come up to one another, and no gap is left between them. */
const meet = ({ strokes: [a, b] }: CrossingPair): boolean => reaches(a, b) && reaches(b, a)

const reaches = ({ begins, scale }: Arm, other: Arm): boolean =>
  begins <= Math.max(scale.from, other.width / 2 + LEAVES) + AS_NEAR

const strengthOf = ({ strokes: [a, b] }: CrossingPair): number => Math.min(a.strength, b.strength)

function crossingOf(a: Arm, b: Arm): Pixel | null {
  const [ux, uy] = unit(a.direction)
  const [vx, vy] = unit(b.direction)
  const sine = ux * vy - uy * vx
  if (Math.abs(sine) < Math.sin(LEAST_ANGLE)) return null
  const along = ((b.foot[0] - a.foot[0]) * vy - (b.foot[1] - a.foot[1]) * vx) / sine
  return pixel(a.foot[0] + along * ux, a.foot[1] + along * uy)
}

/** Farther along where too little of it agrees so near, as beside hatching. */
function traceFarEnough(
  context: SearchContext,
  stroke: Arm,
  other: Arm,
  crossing: Pixel,
): AcceptedStroke | NoStrokeReason {
  const near = traceBeside(context, stroke, other, crossing)
  if (!isReason(near) || near.code !== 'stroke.too-little-agrees' || stroke.to >= FARTHER) return near
  const longer = { ...stroke, from: stroke.from < 0 ? -FARTHER : stroke.from, to: FARTHER }
  const far = traceBeside(context, longer, other, crossing)
  return isReason(far) ? near : far
}

/** Traces a stroke once more, without what lies within or beside the other. */
function traceBeside(
  context: SearchContext,
  stroke: Arm,
  other: Arm,
  crossing: Pixel,
): AcceptedStroke | NoStrokeReason {
  const [dx, dy] = unit(stroke.direction)
  const flip = dx < -1e-9 || (Math.abs(dx) <= 1e-9 && dy < 0)
  const place = (along: number): Pixel => pixel(stroke.foot[0] + along * dx, stroke.foot[1] + along * dy)
  const [from, to] = [place(flip ? stroke.to : stroke.from), place(flip ? stroke.from : stroke.to)]
  const angle = Math.abs(Math.sin(stroke.direction - other.direction))
  const lean = Math.abs(Math.cos(stroke.direction - other.direction)) / angle
  const { scale } = stroke
  const most = MOST_BESIDE * scale.to
  const within = Math.min((other.width / 2 + 2) / angle + (stroke.width / 2 + 6) * lean, most)
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const at =
    ((crossing[0] - from[0]) * (to[0] - from[0]) + (crossing[1] - from[1]) * (to[1] - from[1])) / length
  const count = piecesFor(length, scale.piece)
  const size = length / count
  const barred = Array.from({ length: count }, (_, k) => {
    const near = Math.abs((k + 0.5) * size - at) < within + size / 2
    return near ? reason('profile.other-stroke') : undefined
  })
  return settleAlong(context, [from, to], stroke, scale, barred)
}
