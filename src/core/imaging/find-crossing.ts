import { type Pixel, pixel } from '../geometry/frames.ts'
import { reason } from '../words/core-words.ts'
import { isOnOneRound } from './accept/on-one-round.ts'
import { detectCrossing } from './detect/crossing-detector.ts'
import { isReason, searchContext } from './detect/detector.ts'
import { detectHole } from './hole/detect-hole.ts'
import { tellHole } from './hole/tell-hole.ts'
import { type LineThrough, lineThrough } from './result/fitted-line.ts'
import { meanSection } from './result/mean-section.ts'
import { noStroke, shapeOf } from './result/stroke-result.ts'
import type { Covariance, NoStroke, SearchOptions, StrokeCrossing } from './result/stroke-types.ts'
import type { GreyPicture } from './window/grey-picture.ts'

/**
 * Where two strokes cross or meet: X, T or L.
 * @param grey of the scan, at least what `searchWindow` says; rough: pixels of the scan, within `reach` (8 px) of the
 * crossing
 * @returns the crossing of the lines fitted to the arms, which are looked at to about 39 px from the place; or of
 * the centre lines of a small hole, fitted together with its circle. Shape and section are those of the first stroke
 */
export function findCrossing(
  grey: GreyPicture,
  rough: Pixel,
  options: SearchOptions = {},
): StrokeCrossing | NoStroke {
  const context = searchContext(grey, options)
  const reading = options.reading ?? 'centre'
  const found = detectCrossing(context, rough)
  if (isReason(found)) {
    const hole = detectHole(context, rough)
    return isReason(hole) ? noStroke(found) : tellHole(hole, reading)
  }
  const [first, second] = found
  const lines: Lines = [lineThrough(grey, first, reading), lineThrough(grey, second, reading)]
  const directions = [directionOf(lines[0]), directionOf(lines[1])] satisfies [number, number]
  const { pixel: at, covariance } = crossingOf(lines)
  const profiles = lines.flatMap((l) => l.profiles)
  const kept = profiles.filter((p) => p.kept).map(({ centre }) => centre)
  if (isOnOneRound(kept, { pixel: at, directions })) return noStroke(reason('stroke.one-round'))
  // The arms are looked for from the pick; fitted along all of their length they may cross elsewhere.
  const away = Math.hypot(at[0] - rough[0], at[1] - rough[1])
  const { reach } = context
  if (!(away <= reach)) return noStroke(reason('stroke.crossing-too-far', { away, reach }))
  return {
    kind: 'crossing',
    reading,
    pixel: at,
    covariance,
    directions,
    shape: shapeOf(first.traced),
    section: meanSection(first.traced, lines[0].shift),
    profiles,
  }
}

type Lines = [LineThrough, LineThrough]

const directionOf = ({ line }: LineThrough): number => Math.atan2(line.direction[1], line.direction[0])

/** The crossing, and its covariance from the uncertainties of both lines across themselves there, to first order. */
function crossingOf([a, b]: Lines): { pixel: Pixel; covariance: Covariance } {
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
