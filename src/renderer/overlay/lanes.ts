import type { Pixel } from '../../core/geometry/frames.ts'
import type { SizeSpan } from './span.ts'

/** Lines that lie closer than this share of their length fall on each other, more or less. */
const CLOSE = 0.06
const PARALLEL = Math.cos((8 * Math.PI) / 180)

/** Which lane each dimension line takes, so that parallel ones over the same stretch stand beside each other. */
export function lanesOf(spans: readonly SizeSpan[]): number[] {
  const lanes: number[] = []
  spans.forEach((span, i) => {
    const taken = new Set<number>()
    for (let j = 0; j < i; j++) {
      if (overlap(span, spans[j] as SizeSpan)) taken.add(lanes[j] as number)
    }
    let lane = 0
    while (taken.has(lane)) lane++
    lanes.push(lane)
  })
  return lanes
}

function overlap(p: SizeSpan, q: SizeSpan): boolean {
  if (p.kind !== 'straight' || q.kind !== 'straight' || !p.offset || !q.offset) return false
  const [ux, uy] = [p.to[0] - p.from[0], p.to[1] - p.from[1]]
  const [vx, vy] = [q.to[0] - q.from[0], q.to[1] - q.from[1]]
  const [u, v] = [Math.hypot(ux, uy), Math.hypot(vx, vy)]
  if (u === 0 || v === 0 || Math.abs(ux * vx + uy * vy) < PARALLEL * u * v) return false
  const along = ([x, y]: Pixel): number => ((x - p.from[0]) * ux + (y - p.from[1]) * uy) / u
  const across = ([x, y]: Pixel): number => ((y - p.from[1]) * ux - (x - p.from[0]) * uy) / u
  const [s, t] = [along(q.from), along(q.to)]
  if (Math.max(s, t) <= 0 || Math.min(s, t) >= u) return false
  return Math.abs(across(q.from) + across(q.to)) / 2 < CLOSE * Math.max(u, v)
}
