import type { InkField } from '../network/glyph-network.ts'
import type { Straight } from './line-votes.ts'
import type { LineLimits, LongLine } from './long-line.ts'

/** Ink from here on is a stroke. */
const STROKE = 0.4
/** A line goes on over a break of so many pixels. */
const BREAK = 5
/** It is thin, with bare ground on both sides, over so much of its length at least. */
const THIN_SHARE = 0.5
/** Half the width of the band that a line is fitted in, pixels. */
const BAND = 3

/** A line as it was followed: each pixel of its way, with the ink's edges across it where it is thin. */
export interface FollowedLine {
  readonly line: LongLine
  readonly steps: readonly LineStep[]
}

/** One pixel of a line's way; edges across are in pixels from the line. */
export interface LineStep {
  readonly x: number
  readonly y: number
  /** Null where something crosses the line or touches it. */
  readonly edges: readonly [number, number] | null
}

/** The long, thin stretches of a straight line. */
export function followLine(field: InkField, rough: Straight, limits: LineLimits): FollowedLine[] {
  const straight = fitted(field, rough)
  const { cos, sin, away } = straight
  const [from, to] = within(field, straight)
  const found: FollowedLine[] = []
  let steps: LineStep[] = []
  let bare = 0
  const end = (): void => {
    const run = steps.slice(0, steps.length - bare)
    const line = longOf(field, run, limits)
    if (line !== null) found.push({ line, steps: run })
    steps = []
    bare = 0
  }
  for (let t = from; t <= to; t++) {
    const [x, y] = [away * cos - t * sin, away * sin + t * cos]
    const edges = edgesAcross(field, x, y, straight, limits.thickest)
    if (edges === 'none') {
      if (steps.length === 0) continue
      steps.push({ x, y, edges: null })
      if (++bare > BREAK) end()
    } else {
      bare = 0
      steps.push({ x, y, edges: edges === 'wide' ? null : edges })
    }
  }
  end()
  return found
}

/** Least squares through the ink near a line, twice. */
function fitted(field: InkField, rough: Straight): Straight {
  let { cos, sin, away } = rough
  for (const band of [BAND, BAND / 2]) {
    let n = 0
    let st = 0
    let sd = 0
    let stt = 0
    let std = 0
    const [from, to] = within(field, { cos, sin, away })
    for (let t = from; t <= to; t++)
      for (let d = -Math.ceil(band); d <= band; d++) {
        const v = inkAt(field, (away + d) * cos - t * sin, (away + d) * sin + t * cos)
        if (v < STROKE) continue
        n++
        st += t
        sd += d
        stt += t * t
        std += t * d
      }
    const spread = n * stt - st * st
    if (spread <= 0) break
    const slope = (n * std - st * sd) / spread
    const offset = (sd - slope * st) / n
    const turn = -Math.atan(slope)
    const [c, s] = [Math.cos(turn), Math.sin(turn)]
    // Turned, and moved by what it was off at its foot.
    ;[cos, sin] = [cos * c - sin * s, sin * c + cos * s]
    away = (away + offset) * c
  }
  return { cos, sin, away }
}

/** From where to where along a line it is in the field. */
function within({ width, height }: InkField, { cos, sin, away }: Straight): [number, number] {
  let [from, to] = [-(width + height), width + height]
  const cut = (foot: number, step: number, most: number): void => {
    if (Math.abs(step) < 1e-9) {
      if (foot < 0 || foot > most) to = from - 1
      return
    }
    const [a, b] = [-foot / step, (most - foot) / step]
    from = Math.max(from, Math.min(a, b))
    to = Math.min(to, Math.max(a, b))
  }
  cut(away * cos, -sin, width - 1)
  cut(away * sin, cos, height - 1)
  return [Math.ceil(from), Math.floor(to)]
}

/** Where ink ends on both sides of a place of a line: nowhere near, or there is none. */
function edgesAcross(
  field: InkField,
  x: number,
  y: number,
  { cos, sin }: Straight,
  thickest: number,
): readonly [number, number] | 'wide' | 'none' {
  const at = (d: number): number => inkAt(field, x + d * cos, y + d * sin)
  const middle = [0, -1, 1].find((d) => at(d) >= STROKE)
  if (middle === undefined) return 'none'
  let [low, high] = [middle, middle]
  while (middle - low <= thickest && at(low - 1) >= STROKE) low--
  while (high - middle <= thickest && at(high + 1) >= STROKE) high++
  return high - low + 1 > thickest ? 'wide' : [low, high]
}

function longOf(field: InkField, run: readonly LineStep[], limits: LineLimits): LongLine | null {
  const [first, last] = [run[0], run.at(-1)]
  if (first === undefined || last === undefined) return null
  const least =
    atEdge(field, first) || atEdge(field, last) ? (limits.leastAtEdge ?? limits.least) : limits.least
  const thin = run.flatMap(({ edges }) => (edges === null ? [] : [edges[1] - edges[0] + 1]))
  if (run.length < least || thin.length < THIN_SHARE * run.length) return null
  thin.sort((a, b) => a - b)
  return { from: [first.x, first.y], to: [last.x, last.y], width: thin[thin.length >> 1] ?? 1 }
}

const atEdge = ({ width, height }: InkField, { x, y }: LineStep): boolean =>
  Math.min(x, y, width - 1 - x, height - 1 - y) < 3

/** Of the nearest pixel; bare ground beyond the edge. */
function inkAt({ width, height, ink }: InkField, x: number, y: number): number {
  const [px, py] = [Math.round(x), Math.round(y)]
  return px < 0 || py < 0 || px >= width || py >= height ? 0 : (ink[py * width + px] ?? 0)
}
