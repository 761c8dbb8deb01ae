import { type Pixel, pixel } from '../../geometry/frames.ts'
import { leastSquares } from '../../linear-algebra/linear-least-squares.ts'
import { median } from '../../uncertainty/median.ts'
import { type AcceptedStroke, acceptStroke, type Demands } from '../accept/acceptance.ts'
import { meanUnit } from '../fit/piece-centres.ts'
import { type ReferenceCurve, roundCurve } from '../strip/reference-curve.ts'
import { isCovered } from '../strip/strip.ts'
import { type Traced, traceStroke } from '../trace/trace-stroke.ts'
import type { GreyPicture } from '../window/grey-picture.ts'
import { isReason } from './detector.ts'

/** A bend counts when it is this many times its own uncertainty. */
const CLEAR = 3
/**
 * On this many also the pieces count that something disturbs: along a straight way a strong bend looks like that itself.
 */
const BEYOND_DOUBT = 12
/** Of so few pieces the scatter says little; then the arc must be seen in more pieces than the straight way is. */
const FEW = 6
const FEWEST = 4
const SMALLEST_RADIUS = 6

/** offset = a + b·s + c·s²/2 over the middles of the pieces, and the standard uncertainty of c for unit scatter. */
interface Parabola {
  a: number
  b: number
  c: number
  unitBend: number
  scatter: number
}

interface Bend extends Parabola {
  /** Whether it rests on few pieces. */
  few: boolean
}

const countKept = ({ judged }: Traced): number => judged.kept.filter(Boolean).length

/**
 * A short piece of a stroke may be a piece of a round one: where the centres of the pieces bend clearly, it is traced
 * again along an arc.
 */
export function followBend(grey: GreyPicture, straight: AcceptedStroke, demands: Demands): AcceptedStroke {
  const bend = bendOf(straight.traced, CLEAR) ?? bendOf(straight.traced, BEYOND_DOUBT, true)
  const traced = bend && traceBend(grey, straight.traced, bend)
  if (bend === null || traced === null) return straight
  const inflation = acceptStroke(traced, demands)
  if (isReason(inflation)) return straight
  if (countKept(traced) < countKept(straight.traced) + (bend.few ? 1 : 0)) return straight
  return staysClear(bend, traced, inflation.centre) ? { traced, inflation } : straight
}

function traceBend(grey: GreyPicture, { strip, fit, centres }: Traced, bend: Bend): Traced | null {
  const onto = arcThrough(strip.curve, bend)
  if (onto === null) return null
  const offsets = strip.pieces.map((p, k) => {
    const s = p.middle - strip.curve.length / 2
    const c = centres[k]
    const at = bend.a + bend.b * s + (bend.c * s * s) / 2
    const near =
      c && Math.abs(c.offset - at) < Math.max(3 * bend.scatter, 0.3) && c.contrast * fit.contrast > 0
    return near ? { offset: at, turn: bend.b + bend.c * s } : null
  })
  const { width, contrast } = fit
  return traceStroke(grey, { strip, offsets, width, contrast, onto, half: width / 2 + 9 })
}

/** Whether the bend is clear too against the noise as it is along the bend, where no misfit hides how it goes together. */
function staysClear({ c, scatter, unitBend }: Bend, traced: Traced, inflation: number): boolean {
  const unit = meanUnit(traced.centres, traced.judged.kept)
  const noise = Math.sqrt(traced.fit.variance * Math.max(inflation, 1) * unit)
  return Math.abs(c) > CLEAR * Math.max(scatter, noise) * unitBend
}

/** The parabola through the centres of the pieces that show the stroke, when it bends clearly. */
function bendOf({ strip, fit, centres, judged }: Traced, clear: number, disturbed = false): Bend | null {
  const noises: number[] = []
  const points = strip.pieces.flatMap((piece, k): [number, number][] => {
    const c = centres[k]
    if (!c || c.contrast * Math.sign(fit.contrast) < 0.5 * Math.abs(fit.contrast)) return []
    const why = judged.because[k]
    if (!isCovered(piece) || (!disturbed && why !== undefined && why.code !== 'profile.aside')) return []
    noises.push(c.square * c.unit)
    return [[piece.middle - strip.curve.length / 2, c.offset]]
  })
  if (points.length < FEWEST) return null
  let chosen = points
  let parabola: Parabola | null = null
  for (let round = 0; round < 3; round++) {
    parabola = parabolaOf(chosen)
    if (parabola === null) return null
    const { a, b, c, scatter } = parabola
    chosen = points.filter(
      ([s, t]) => Math.abs(t - a - b * s - (c * s * s) / 2) < Math.max(2.5 * scatter, 0.1),
    )
    if (chosen.length < FEWEST) return null
  }
  if (parabola === null) return null
  // Along a straight way a bent stroke leaves residuals; those of each piece about its own centre tell the noise.
  const model = Math.sqrt(median(noises))
  const scatter = Math.max(parabola.scatter, model, 0.01)
  const few = chosen.length < FEW
  return Math.abs(parabola.c) > clear * scatter * parabola.unitBend ? { ...parabola, scatter, few } : null
}

function parabolaOf(points: readonly [number, number][]): Parabola | null {
  const fit = leastSquares(
    points.map(([s, t]) => [t, [1, s, (s * s) / 2]] as const),
    3,
  )
  if (fit === null) return null
  const [a = 0, b = 0, c = 0] = fit.solution
  const scatter = Math.sqrt(fit.squares / Math.max(points.length - 3, 1))
  return { a, b, c, unitBend: Math.sqrt(fit.inverse.at(-1) ?? Number.NaN), scatter }
}

/** The arc that touches the parabola in the middle of its curve; it runs the same way. */
function arcThrough(curve: ReferenceCurve, { a, b, c }: Parabola): ReferenceCurve | null {
  const radius = (1 + b * b) ** 1.5 / Math.abs(c)
  if (!(radius > SMALLEST_RADIUS)) return null
  const middle = curve.length / 2
  const foot = curve.place(middle, a)
  const [nx, ny] = curve.across(middle)
  const [dx, dy] = [ny, -nx]
  const size = Math.hypot(1, b)
  const along: Pixel = pixel((dx + b * nx) / size, (dy + b * ny) / size)
  const side = Math.sign(c)
  const centre: Pixel = pixel(foot[0] - along[1] * radius * side, foot[1] + along[0] * radius * side)
  const angle = Math.atan2(foot[1] - centre[1], foot[0] - centre[0])
  const sweep = (side * Math.min(curve.length, 5 * radius)) / radius
  return roundCurve(centre, radius, angle - sweep / 2, sweep)
}
