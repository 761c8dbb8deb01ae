import { type Pixel, pixel } from '../../core/geometry/frames.ts'
import type { FoundStroke } from '../../core/imaging/index.ts'
import type { FoundOn } from '../../core/job/model/types.ts'
import type { AnyReason } from '../../core/words/reason.ts'

/** Where a stroke is looked for in the scan that was found in a coarser picture. */
interface Around {
  /** In pixels of the scan, as many as were pointed at. */
  places: readonly Pixel[]
  as: FoundOn['as']
}

/**
 * Where to look in the scan for a stroke that was found in a coarser picture of it.
 * @param there where it was pointed at, pixels of that picture
 * @param step pixels of the scan for each of its pixels, which is also how far the stroke may be from where it was found
 */
export function aroundCoarse(coarse: FoundStroke, there: readonly Pixel[], step: number): Around {
  const scan = ([x, y]: readonly [number, number]): Pixel => pixel(x * step, y * step)
  switch (coarse.kind) {
    case 'crossing':
      return { places: [scan(coarse.pixel)], as: 'crossing' }
    case 'point':
      return { places: [scan(coarse.pixel)], as: 'point' }
    case 'line': {
      const [[ax, ay], [bx, by]] = coarse.ends
      const length = Math.hypot(bx - ax, by - ay)
      const [ux, uy] = [(bx - ax) / length, (by - ay) / length]
      const places = there.map(([x, y]) => {
        const along = (x - ax) * ux + (y - ay) * uy
        return scan([ax + along * ux, ay + along * uy])
      })
      return { places, as: 'line' }
    }
    case 'circle':
    case 'arc': {
      const { centre, radius } = coarse
      const rays = there.map(([x, y]) => {
        const far = Math.hypot(x - centre[0], y - centre[1])
        return far === 0 ? ([1, 0] as const) : ([(x - centre[0]) / far, (y - centre[1]) / far] as const)
      })
      const places = rays.map(([x, y]) => scan([centre[0] + radius * x, centre[1] + radius * y]))
      return { places, as: coarse.kind }
    }
  }
}

/**
 * Why nothing was found in a coarser picture, told of the scan: the numbers of such a reason are pixels.
 * @param step pixels of the scan for each of the picture's
 */
export function inScan(because: AnyReason, step: number): AnyReason {
  if (!('parts' in because)) return because
  const parts = Object.entries(because.parts).map(([name, part]) => [
    name,
    typeof part === 'number' ? part * step : part,
  ])
  return { ...because, parts: Object.fromEntries(parts) } as AnyReason
}
