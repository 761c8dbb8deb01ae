import type { InkField } from '../network/glyph-network.ts'
import { type FollowedLine, followLine } from './follow-line.ts'
import { LineVotes } from './line-votes.ts'
import type { LineLimits, LongLine } from './long-line.ts'

/** Ink from here on votes for the lines through it. */
const VOTES = 0.5
/** More lines than this are not looked for in one field. */
const MOST_LINES = 14
/** Of more places than this only some vote. */
const MOST_PLACES = 8000
/** The pale rim of a line goes so many pixels on beyond where it is a stroke. */
const RIM = 2
/** So many pixels beside a stroke that crosses it a line stays, for the stroke's own rim. */
const BESIDE = 2

/**
 * Takes long straight lines out: those that measure run beside a figure, from it, and through it. Where one crosses a
 * stroke of a glyph, or runs along one, what is there stays whole.
 * @param limits lengths in pixels of the field: a digit of 22 has bars of fractions up to 40
 * @returns a field of its own, and the lines that are no longer in it
 */
export function withoutLongLines(
  field: InkField,
  limits: LineLimits,
): { readonly field: InkField; readonly lines: readonly LongLine[] } {
  const { width, height } = field
  const ink = Float32Array.from(field.ink)
  const places: number[] = []
  for (let i = 0; i < ink.length; i++) if ((ink[i] ?? 0) >= VOTES) places.push(i)
  const stride = Math.max(1, Math.ceil(places.length / MOST_PLACES))
  const voters = places.filter((_, i) => i % stride === 0)
  const votes = new LineVotes(width, height)
  for (const i of voters) votes.add(i % width, Math.floor(i / width), 1)
  const lines: LongLine[] = []
  const counted = new Set(voters)
  const least = Math.min(limits.least, limits.leastAtEdge ?? limits.least)
  for (let n = 0; n < MOST_LINES; n++) {
    const { line, votes: number } = votes.best()
    if (number * stride < 0.6 * least) break
    for (const followed of followLine({ width, height, ink }, line, limits)) {
      lines.push(followed.line)
      for (const i of erase({ width, height, ink }, followed))
        if (counted.delete(i)) votes.add(i % width, Math.floor(i / width), -1)
    }
    votes.strike(line)
  }
  return { field: { width, height, ink }, lines }
}

/** Takes a line out where it is by itself. @returns the pixels that it was in */
function erase({ width, height, ink }: InkField, { line, steps }: FollowedLine): Set<number> {
  const erased = new Set<number>()
  const length = Math.hypot(line.to[0] - line.from[0], line.to[1] - line.from[1])
  if (length === 0) return erased
  const [cos, sin] = [-(line.to[1] - line.from[1]) / length, (line.to[0] - line.from[0]) / length]
  // Edges were told across as the line was followed, which may be the other way round: both are taken alike.
  const alone = steps.map(({ edges }) => edges !== null && edges[1] - edges[0] < line.width + 1)
  for (const [n, { x, y, edges }] of steps.entries()) {
    if (edges === null || !alone.slice(Math.max(0, n - BESIDE), n + BESIDE + 1).every(Boolean)) continue
    const reach = Math.max(-edges[0], edges[1])
    for (const side of [-1, 1]) {
      let before = Number.POSITIVE_INFINITY
      for (let d = 0; d <= reach + RIM; d++) {
        const [px, py] = [Math.round(x + side * d * cos), Math.round(y + side * d * sin)]
        if (px < 0 || py < 0 || px >= width || py >= height) break
        // Where ink grows again beyond the line's edge, another stroke begins.
        const v = ink[py * width + px] ?? 0
        if (d > reach && v > before + 0.05) break
        before = v
        erased.add(py * width + px)
      }
    }
  }
  for (const i of erased) ink[i] = 0
  return erased
}
