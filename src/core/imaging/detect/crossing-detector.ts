import { type Pixel, pixel } from '../../geometry/frames.ts'
import { type AcceptedStroke, BY_HAND } from '../accept/acceptance.ts'
import type { NoStroke, SearchOptions } from '../result/stroke-types.ts'
import { piecesFor } from '../strip/strip.ts'
import type { GreyWindow } from '../window/grey-window.ts'
import { REACH } from '../window/search-window.ts'
import { windowNoise } from '../window/window-noise.ts'
import { ARM_TO, type Arm, armsAt, PIECE, settleAlong, unit } from './crossing-arms.ts'
import { joinArms } from './join-arms.ts'

/** Strokes nearer in direction than this do not fix where they cross, radians. */
const LEAST_ANGLE = 0.2

/** The two strokes that cross or meet nearest to the place, each traced with the neighbourhood of the crossing left out. */
export function detectCrossing(
  grey: GreyWindow,
  at: Pixel,
  options: SearchOptions,
): [AcceptedStroke, AcceptedStroke] | NoStroke {
  const reach = options.reach ?? REACH
  const noise = windowNoise(grey)
  const strokes = joinArms(armsAt(grey, at, reach, noise))
  let because = `No two strokes that cross or meet were seen within ${reach} px. ${BY_HAND}`
  for (const [a, b, crossing] of nearestPairs(strokes, at, reach)) {
    const first = traceBeside(grey, a, b, crossing, noise)
    const second = traceBeside(grey, b, a, crossing, noise)
    if (typeof first !== 'string' && typeof second !== 'string') return [first, second]
    because = typeof first === 'string' ? first : (second as string)
  }
  return { kind: 'none', because }
}

function nearestPairs(strokes: readonly Arm[], at: Pixel, reach: number): [Arm, Arm, Pixel][] {
  const pairs: [Arm, Arm, Pixel, number][] = []
  strokes.forEach((a, i) => {
    for (const b of strokes.slice(i + 1)) {
      const crossing = crossingOf(a, b)
      if (crossing === null) continue
      const away = Math.hypot(crossing[0] - at[0], crossing[1] - at[1])
      if (away <= reach + Math.max(a.width, b.width) / 2) pairs.push([a, b, crossing, away])
    }
  })
  pairs.sort((p, q) => p[3] - q[3] || q[0].strength - p[0].strength)
  return pairs.slice(0, 3).map(([a, b, crossing]) => [a, b, crossing])
}

function crossingOf(a: Arm, b: Arm): Pixel | null {
  const [ux, uy] = unit(a.direction)
  const [vx, vy] = unit(b.direction)
  const sine = ux * vy - uy * vx
  if (Math.abs(sine) < Math.sin(LEAST_ANGLE)) return null
  const along = ((b.foot[0] - a.foot[0]) * vy - (b.foot[1] - a.foot[1]) * vx) / sine
  return pixel(a.foot[0] + along * ux, a.foot[1] + along * uy)
}

/** Traces a stroke once more, without what lies within or beside the other. */
function traceBeside(
  grey: GreyWindow,
  stroke: Arm,
  other: Arm,
  crossing: Pixel,
  noise: number,
): AcceptedStroke | string {
  const [dx, dy] = unit(stroke.direction)
  const flip = dx < -1e-9 || (Math.abs(dx) <= 1e-9 && dy < 0)
  const place = (along: number): Pixel => pixel(stroke.foot[0] + along * dx, stroke.foot[1] + along * dy)
  const [from, to] = [place(flip ? stroke.to : stroke.from), place(flip ? stroke.from : stroke.to)]
  const angle = Math.abs(Math.sin(stroke.direction - other.direction))
  const lean = Math.abs(Math.cos(stroke.direction - other.direction)) / angle
  const within = Math.min((other.width / 2 + 2) / angle + (stroke.width / 2 + 6) * lean, ARM_TO - 14)
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const at =
    ((crossing[0] - from[0]) * (to[0] - from[0]) + (crossing[1] - from[1]) * (to[1] - from[1])) / length
  const count = piecesFor(length, PIECE)
  const barred = Array.from({ length: count }, (_, k) => {
    const size = length / count
    const near = Math.abs((k + 0.5) * size - at) < within + size / 2
    return near ? 'the other stroke is here' : undefined
  })
  const path = { width: stroke.width, contrast: stroke.contrast }
  return settleAlong(grey, from, to, path, noise, barred, 12)
}
