import { type Circle, circleThrough } from '../../geometry/circle-through.ts'
import { type Pixel, pixel } from '../../geometry/frames.ts'
import { median } from '../../uncertainty/median.ts'
import type { SearchContext } from '../detect/detector.ts'
import { circleOrNone } from '../fit/circle-or-none.ts'
import { greyAt } from '../window/grey-at.ts'
import type { GreyPicture } from '../window/grey-picture.ts'

/** A small round stroke about a place. */
export interface Hole extends Circle {
  /** Of its stroke, about, pixels. */
  width: number
}

/** Holes looked for, pixels: of smaller ones the centre lines are hidden by the circle, of larger ones they are seen. */
const RADII: readonly [number, number] = [6, 24]
const RAYS = 24
const STEP = 0.5
/** Ink is what differs from the paper by this share of what the darkest of it does. */
const INK = 0.45
/** Of all pixels about, the share that is surely not ink; and how much of the ink is the strongest. */
const [PAPER, STRONGEST] = [0.5, 0.98] as const
/** No stroke of a hole is wider, pixels. */
const WIDEST = 9
/** So near to a circle a place is on it, pixels. */
const ON_IT = 1
/** The share of the rays that must show it: centre lines hide it from the rest, the more the smaller the hole is. */
const LEAST_RAYS = 0.6
/** How far off its middle a hole is looked at from, at most, as a share of its radius. */
const OFF_MIDDLE = 0.8

/** Where a ray passes through ink. */
interface Passage {
  at: Pixel
  width: number
}

/**
 * The small round stroke about a place: the circle that passes through ink in most directions, seen from the place and
 * then from its own middle.
 * @returns null when there is none
 */
export function holeAround({ grey, usualInk }: SearchContext, at: Pixel): Hole | null {
  const sign = usualInk === 'dark' ? -1 : 1
  return roundFrom(passagesFrom(grey, at, sign), at)
}

function roundFrom(rays: readonly (readonly Passage[])[], at: Pixel): Hole | null {
  let best: Circle | null = null
  let most = Math.ceil(LEAST_RAYS * RAYS) - 1
  for (let i = 0; i < RAYS / 3; i++) {
    const [first = [], second = [], third = []] = [0, 1, 2].map((k) => rays[i + (k * RAYS) / 3])
    for (const a of first)
      for (const b of second)
        for (const c of third) {
          const circle = circleThrough([a.at, b.at, c.at])
          if (circle === null || !isHole(circle, at)) continue
          const shown = rays.filter((ray) => ray.some((p) => isOn(p, circle))).length
          if (shown <= most) continue
          best = circle
          most = shown
        }
  }
  if (best === null) return null
  const seen = best
  const on = rays.flatMap((ray) => ray.find((p) => isOn(p, seen)) ?? [])
  const circle = circleOrNone(on.map((p) => p.at))
  return circle && isHole(circle, at) ? { ...circle, width: median(on.map((p) => p.width)) } : null
}

const fromCentre = ({ centre }: Circle, [x, y]: Pixel): number => Math.hypot(x - centre[0], y - centre[1])

const isOn = ({ at }: Passage, circle: Circle): boolean =>
  Math.abs(fromCentre(circle, at) - circle.radius) < ON_IT

const isHole = (circle: Circle, at: Pixel): boolean =>
  circle.radius >= RADII[0] &&
  circle.radius <= RADII[1] &&
  fromCentre(circle, at) < OFF_MIDDLE * circle.radius

/** Where rays from a place, evenly all round, pass through ink. @param sign of the contrast of ink */
function passagesFrom(grey: GreyPicture, at: Pixel, sign: -1 | 1): Passage[][] {
  const far = (1 + OFF_MIDDLE) * RADII[1]
  const rays = Array.from({ length: RAYS }, (_, i) => {
    const angle = (2 * Math.PI * (i + 0.5)) / RAYS
    const [dx, dy] = [Math.cos(angle) * STEP, Math.sin(angle) * STEP]
    const values: number[] = []
    for (let k = 0; k * STEP <= far; k++) values.push(sign * greyAt(grey, at[0] + k * dx, at[1] + k * dy))
    return { dx, dy, values }
  })
  const all = rays.flatMap((ray) => ray.values.filter((v) => !Number.isNaN(v))).sort((a, b) => a - b)
  const paper = all[Math.floor(PAPER * all.length)] ?? 0
  const strongest = all[Math.floor(STRONGEST * all.length)] ?? 0
  const level = paper + INK * (strongest - paper)
  return rays.map(({ dx, dy, values }) => {
    const passages: Passage[] = []
    let first = 0
    values.forEach((v, k) => {
      if (!(v > level)) first = k + 1
      else if (!((values[k + 1] ?? Number.NaN) > level) && (k - first) * STEP < WIDEST) {
        const middle = (first + k) / 2
        passages.push({ at: pixel(at[0] + middle * dx, at[1] + middle * dy), width: (k - first + 1) * STEP })
      }
    })
    return passages
  })
}
