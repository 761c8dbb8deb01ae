import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import type { UnnamedMark } from '../../../../src/core/job/from-picks/picked-mark.ts'
import { newJob } from '../../../../src/core/job/model/new-job.ts'
import type { Job, Mark } from '../../../../src/core/job/model/types.ts'

/** Pixels in a millimetre, the same both ways, and where the ends of the figured size are. */
export const PER_MM = 5
export const FIGURED = { from: [100, 1200] as const, to: [1900, 1200] as const, mm: 360, sigma: 0.5 }

const point = (id: string, [x, y]: readonly [number, number]): Mark => ({
  id,
  sheet: 'S1',
  how: 'hand',
  sigma: FIGURED.sigma,
  kind: 'point',
  pixel: pixel(x, y),
})

/** A job of one view with its scale from one figured size, on film that was drawn on without error. */
export function slotJob(): Job {
  return {
    ...newJob('Gland plate', 'mm'),
    sheets: [
      {
        id: 'S1',
        title: 'Plate',
        record: {},
        scan: { file: 'plate.png', sha256: '0'.repeat(64), page: 1, width: 2000, height: 1500 },
        draughting: '0.000001 mm',
        paper: '0 %',
      },
    ],
    marks: [point('M1', FIGURED.from), point('M2', FIGURED.to)],
    views: [
      {
        id: 'V1',
        sheet: 'S1',
        name: 'Plan',
        mapping: 'uniform',
        references: [{ id: 'R1', kind: 'distance', marks: ['M1', 'M2'], size: `${FIGURED.mm} mm` }],
      },
    ],
  }
}

/** Places evenly round an end of a slot, 65° to both sides of its top. */
export function placesOnEnd(centre: Pixel, radius: number, top: number, n = 13): Pixel[] {
  return Array.from({ length: n }, (_, i) => {
    const way = top + (((2 * i) / (n - 1) - 1) * 65 * Math.PI) / 180
    return pixel(centre[0] + radius * Math.cos(way), centre[1] + radius * Math.sin(way))
  })
}

/** An end as it is found on its stroke. */
export const foundEnd = (pixels: Pixel[], sigma: number): UnnamedMark => ({
  how: 'stroke',
  sigma,
  kind: 'circle',
  pixels,
})
