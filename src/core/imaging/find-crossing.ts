import { type Pixel, pixel } from '../geometry/frames.ts'
import { isOnOneRound } from './accept/on-one-round.ts'
import { detectCrossing } from './detect/crossing-detector.ts'
import { type LineThrough, lineThrough } from './result/fitted-line.ts'
import { sectionOf } from './result/mean-section.ts'
import { shapeOf } from './result/stroke-result.ts'
import type { Covariance, NoStroke, SearchOptions, StrokeCrossing } from './result/stroke-types.ts'
import type { GreyWindow } from './window/grey-window.ts'
import { REACH } from './window/search-window.ts'

/**
 * Where two strokes cross or meet: X, T or L.
 * @param grey of the scan, at least what `searchWindow` says; rough: pixels of the scan, within `reach` (8 px) of the
 * crossing
 * @returns the crossing of the lines fitted to the arms, which are looked at to about 39 px from the place; shape and
 * section are those of the first stroke
 */
export function findCrossing(
  grey: GreyWindow,
  rough: Pixel,
  options: SearchOptions = {},
): StrokeCrossing | NoStroke {
  const found = detectCrossing(grey, rough, options)
  if ('kind' in found) return found
  const reading = options.reading ?? 'centre'
  const lines = found.map((f) => lineThrough(grey, f, reading)) as [LineThrough, LineThrough]
  const [first] = found
  const crossing: StrokeCrossing = {
    kind: 'crossing',
    reading,
    ...crossingOf(lines),
    directions: lines.map(({ line }) => Math.atan2(line.direction[1], line.direction[0])) as [number, number],
    shape: shapeOf(first.traced),
    section: sectionOf(first.traced, lines[0].shift),
    profiles: lines.flatMap((l) => l.profiles),
  }
  const kept = crossing.profiles.filter((p) => p.kept).map(({ centre }) => centre)
  if (isOnOneRound(kept, crossing)) return ONE_ROUND
  const reach = options.reach ?? REACH
  const away = Math.hypot(crossing.pixel[0] - rough[0], crossing.pixel[1] - rough[1])
  return away <= reach ? crossing : tooFar(away, reach)
}

/** The arms are looked for from the pick; fitted along all of their length they may cross elsewhere. */
const tooFar = (away: number, reach: number): NoStroke => ({
  kind: 'none',
  because: `The strokes here cross ${away.toFixed(1)} px from the pick, and no farther than ${reach} px is looked. Pick nearer to where they cross.`,
})

const ONE_ROUND: NoStroke = {
  kind: 'none',
  because: 'What is here is one round stroke and no crossing. Pick it as a single stroke, or go nearer.',
}

/** The crossing, and its covariance from the uncertainties of both lines across themselves there, to first order. */
function crossingOf([a, b]: [LineThrough, LineThrough]): { pixel: Pixel; covariance: Covariance } {
  const [ax, ay] = a.line.direction
  const [bx, by] = b.line.direction
  const sine = ax * by - ay * bx
  const gapX = b.line.centroid[0] - a.line.centroid[0]
  const gapY = b.line.centroid[1] - a.line.centroid[1]
  const alongA = (gapX * by - gapY * bx) / sine
  const alongB = (gapX * ay - gapY * ax) / sine
  const across = ({ line, sigma }: LineThrough, along: number) =>
    sigma ** 2 * (line.offset ** 2 + (along * line.rotation) ** 2)
  const va = across(a, alongA) / sine ** 2
  const vb = across(b, alongB) / sine ** 2
  return {
    pixel: pixel(a.line.centroid[0] + alongA * ax, a.line.centroid[1] + alongA * ay),
    covariance: [va * bx * bx + vb * ax * ax, va * bx * by + vb * ax * ay, va * by * by + vb * ay * ay],
  }
}
