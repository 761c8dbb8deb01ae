import { type Pixel, type Screen, screen } from '../../core/geometry/frames.ts'
import type { Stroke } from './laid.ts'
import type { OnScreen } from './lay-out-size.ts'

/** Half of the tick across a stroke at each profile that was kept, CSS pixels. */
const TICK = 4
/** A cross with its middle open, at each that was left out, CSS pixels. */
const OUTER = 5
const INNER = 2
/** Half of the plus at a place that was picked again, CSS pixels. */
const PLUS = 3

const line = 'full'

const CORNERS = [
  [1, 1],
  [1, -1],
  [-1, 1],
  [-1, -1],
] as const

/** Centres of profiles, as they are drawn: a tick across the stroke where one was kept, an open cross where not. */
export function centreStrokes(kept: readonly Pixel[], leftOut: readonly Pixel[], at: OnScreen): Stroke[] {
  const places = kept.map(at)
  return [...ticks(places), ...leftOut.map(at).flatMap(openCross)]
}

function ticks(places: readonly Screen[]): Stroke[] {
  return places.map(([x, y], i) => {
    const [ax, ay] = places[i - 1] ?? screen(x, y)
    const [bx, by] = places[i + 1] ?? screen(x, y)
    const long = Math.hypot(bx - ax, by - ay) || 1
    const [nx, ny] = [(-(by - ay) / long) * TICK, ((bx - ax) / long) * TICK]
    return {
      points: [screen(x - nx, y - ny), screen(x + nx, y + ny)],
      line,
      fine: true,
    }
  })
}

function openCross([x, y]: Screen): Stroke[] {
  return CORNERS.map(([sx, sy]) => ({
    points: [screen(x + sx * INNER, y + sy * INNER), screen(x + sx * OUTER, y + sy * OUTER)],
    line,
    fine: true,
  }))
}

/** A small plus wherever something was picked again. */
export const againStrokes = (places: readonly Pixel[], at: OnScreen): Stroke[] =>
  places.map(at).flatMap(([x, y]) => [
    { points: [screen(x - PLUS, y), screen(x + PLUS, y)], line, fine: true },
    { points: [screen(x, y - PLUS), screen(x, y + PLUS)], line, fine: true },
  ])
