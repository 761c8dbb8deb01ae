import { type Pixel, pixel } from '../geometry/frames.ts'
import { shapeOf } from './bring-home.ts'
import type { GreyWindow } from './grey-window.ts'
import { traceLine } from './line-search.ts'
import { lineThrough } from './line-through.ts'
import { sectionOf } from './section.ts'
import type { NoStroke, SearchOptions, StrokeLine } from './stroke.ts'

/**
 * The straight stroke that runs from near one place to near another.
 * @param grey of the scan, at least what `windowFor` says; from and to: pixels of the scan, each within `reach`
 * (8 px) of the stroke
 * @returns the stroke, or why there is none
 * Method: pieces along the way, fitted on the raw pixels (see `fitStrip`), those that do not belong left out
 * (`judgePieces`), then the total least-squares line through their centres.
 */
export function findLine(
  grey: GreyWindow,
  from: Pixel,
  to: Pixel,
  options: SearchOptions = {},
): StrokeLine | NoStroke {
  const found = traceLine(grey, from, to, options)
  if ('because' in found) return found
  const { line, sigma, profiles, shift } = lineThrough(grey, found, options.reading ?? 'centre')
  const [start, end] = line.ends
  return {
    kind: 'line',
    ends: [pixel(start[0], start[1]), pixel(end[0], end[1])],
    sigma,
    shape: shapeOf(found.traced),
    section: sectionOf(found.traced, shift),
    profiles,
  }
}
