import type { Picture } from './picture.ts'

/** Half the width of what is looked at, pixels. */
const REACH = 8

/**
 * Where the middle of a dark line lies across a row, or down a column, near a place that it is thought to be at:
 * the centroid of its darkness. Places are counted from the picture's edge, so that the first pixel's middle is 0.5.
 */
export function middleOfInk(
  { width, height, samples, values }: Picture,
  axis: 'x' | 'y',
  near: number,
  along: number,
): number {
  const end = axis === 'x' ? width : height
  let ink = 0
  let moment = 0
  for (let at = Math.max(0, Math.floor(near) - REACH); at < Math.min(end, near + REACH); at++) {
    const pixel = axis === 'x' ? Math.floor(along) * width + at : at * width + Math.floor(along)
    const dark = 255 - (values[pixel * samples] ?? 255)
    ink += dark
    moment += dark * (at + 0.5)
  }
  return moment / ink
}
