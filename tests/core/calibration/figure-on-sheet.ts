import { type Pixel, truePoint } from '../../../src/core/geometry/frames.ts'
import type { Measure } from '../../../src/core/job/model/types.ts'
import type { ViewMapping } from '../../../src/core/mapping/view-mapping.ts'
import type { Feature } from '../../../src/core/measuring/features/feature-of-mark.ts'
import type { RandomStream } from '../../../src/core/uncertainty/random.ts'
import { circleMark, lineMark, pathMark, pointMark, type XY } from '../measuring/marks.ts'

/** The pixel that a mapping takes to a true point. */
export const pixelOf = ({ mapping, frame }: ViewMapping, theta: readonly number[], [x, y]: XY): Pixel =>
  mapping.invert(theta, truePoint(x, y), frame)

/** The features that a measure is taken from, somewhere on the sheet at random; circles are true circles. */
export function randomFeatures(
  measure: Measure | 'spacing of a point',
  place: (truth: XY) => XY,
  random: RandomStream,
): Feature[] {
  const anywhere = (): XY => [160 * (random.uniform() - 0.5) * 2, 110 * (random.uniform() - 0.5) * 2]
  const along = (from: XY, direction: number, length: number, n: number): XY[] =>
    Array.from({ length: n }, (_, i): XY => {
      const t = (length * i) / (n - 1)
      return place([from[0] + t * Math.cos(direction), from[1] + t * Math.sin(direction)])
    })
  const circle = (id: string): Feature => {
    const [x, y] = anywhere()
    const r = 20 + 50 * random.uniform()
    const from = 6 * random.uniform()
    const arc = 3 + 3 * random.uniform()
    return circleMark(
      id,
      Array.from({ length: 8 }, (_, i): XY => {
        const a = from + (arc * i) / 8
        return place([x + r * Math.cos(a), y + r * Math.sin(a)])
      }),
    )
  }
  const direction = 2 * Math.PI * random.uniform()
  const first = anywhere()
  switch (measure) {
    case 'distance':
      return [pointMark('P', place(first)), pointMark('Q', place(anywhere()))]
    case 'spacing of a point':
      return [lineMark('A', along(first, direction, 120, 5)), pointMark('Q', place(anywhere()))]
    case 'spacing': {
      const beside: XY = [first[0] - 60 * Math.sin(direction), first[1] + 60 * Math.cos(direction)]
      const backwards = random.uniform() < 0.5
      const second = along(beside, direction + 0.02 * random.normal(), 90, 4)
      return [
        lineMark('A', along(first, direction, 120, 5)),
        lineMark('B', backwards ? second.reverse() : second),
      ]
    }
    case 'angle': {
      const turn = direction + 0.3 + 2.4 * random.uniform()
      return [lineMark('A', along(first, direction, 120, 5)), lineMark('B', along(first, turn, 90, 4))]
    }
    case 'diameter':
    case 'radius':
      return [circle('K')]
    case 'centres':
    case 'slot-width':
    case 'slot-length':
      return [circle('K'), circle('L')]
    case 'run':
      return [pathMark('T', [first, anywhere(), anywhere(), anywhere()].map(place), random.uniform() < 0.5)]
    case 'area': {
      const corners = Array.from({ length: 6 }, (_, i): XY => {
        const a = (i + 0.6 * random.uniform()) * (Math.PI / 3)
        const r = 40 + 60 * random.uniform()
        return place([r * Math.cos(a), r * Math.sin(a)])
      })
      return [pathMark('T', random.uniform() < 0.5 ? corners : corners.reverse(), true)]
    }
  }
}

export const EVERY_MEASURE = [
  'distance',
  'spacing',
  'spacing of a point',
  'diameter',
  'radius',
  'centres',
  'slot-width',
  'slot-length',
  'angle',
  'run',
  'area',
] as const
