import type { StatedSize } from '../../../src/core/calibration/reference.ts'
import type { RandomStream } from '../../../src/core/uncertainty/random.ts'
import { lengthReference, type XY } from '../measuring/marks.ts'

export const MM_PER_PX = 0.1
export const SIGMA = 1
export const U = 0.1

/** Ends of seven references in all directions, pixels. */
const ENDS: [XY, XY][] = [
  [
    [200, 200],
    [2700, 260],
  ],
  [
    [180, 1900],
    [2650, 1850],
  ],
  [
    [220, 250],
    [260, 1950],
  ],
  [
    [2600, 300],
    [2550, 1880],
  ],
  [
    [300, 1800],
    [2500, 350],
  ],
  [
    [350, 300],
    [2450, 1750],
  ],
  [
    [1400, 150],
    [1450, 2000],
  ],
]

/**
 * Seven references on a sheet of 0.1 mm a pixel; `stretch` along and across, errors as their sigmas say.
 * @param slips what is wrong with a stated size, mm, by its index
 */
export function sevenReferences(
  random: RandomStream | null,
  slips: Record<number, number> = {},
  stretch: XY = [1, 1],
): StatedSize[] {
  const error = (): number => (random === null ? 0 : random.normal())
  const noisy = ([x, y]: XY): XY => [x + SIGMA * error(), y + SIGMA * error()]
  return ENDS.flatMap(([p, q], i) => {
    const size = MM_PER_PX * Math.hypot((q[0] - p[0]) * stretch[0], (q[1] - p[1]) * stretch[1])
    return lengthReference(`R${i + 1}`, noisy(p), noisy(q), size + U * error() + (slips[i] ?? 0), U, SIGMA)
  })
}
