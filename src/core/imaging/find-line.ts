import { type Pixel, pixel } from '../geometry/frames.ts'
import { isReason, searchContext } from './detect/detector.ts'
import { detectLine } from './detect/line-detector.ts'
import { lineThrough } from './result/fitted-line.ts'
import { meanSection } from './result/mean-section.ts'
import { noStroke, shapeOf } from './result/stroke-result.ts'
import type { NoStroke, SearchOptions, StrokeLine } from './result/stroke-types.ts'
import type { GreyPicture } from './window/grey-picture.ts'

/**
 * The straight stroke that runs from near one place to near another.
 * @param grey of the scan, at least what `searchWindow` says; from and to: pixels of the scan, each within `reach`
 * (8 px) of the stroke
 * @returns the stroke, or why there is none
 * Method: pieces along the way, fitted on the raw pixels (see `fitStrip`), those that do not belong left out
 * (`rejectOutliers`), then the total least-squares line through their centres.
 */
export function findLine(
  grey: GreyPicture,
  from: Pixel,
  to: Pixel,
  { reach, reading = 'centre', ink }: SearchOptions = {},
): StrokeLine | NoStroke {
  const found = detectLine(searchContext(grey, { reach, ink }), from, to)
  if (isReason(found)) return noStroke(found)
  const { line, sigma, profiles, shift } = lineThrough(grey, found, reading)
  const [start, end] = line.ends
  return {
    kind: 'line',
    reading,
    ends: [pixel(start[0], start[1]), pixel(end[0], end[1])],
    sigma,
    shape: shapeOf(found.traced),
    section: meanSection(found.traced, shift),
    profiles,
  }
}
