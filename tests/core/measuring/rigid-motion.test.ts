import { describe, expect, it } from 'vitest'
import { calibrate } from '../../../src/core/calibration/calibrate.ts'
import { pixel, truePoint } from '../../../src/core/geometry/frames.ts'
import type { MappingKind, Measure } from '../../../src/core/job/model/types.ts'
import { measureFeatures } from '../../../src/core/measuring/measure-features.ts'
import { MEASURES } from '../../../src/core/measuring/measures/measures.ts'
import type { TrueFeature } from '../../../src/core/measuring/measures/true-measure.ts'
import { standardUncertainty } from '../../../src/core/uncertainty/covariance.ts'
import { randomStream } from '../../../src/core/uncertainty/random.ts'
import { EVERY_MEASURE, randomFeatures } from '../calibration/figure-on-sheet.ts'
import { lengthReference, pathMark, pointMark, viewOf, type XY } from './marks.ts'

describe('moving and turning the part changes no measure', () => {
  it.each(EVERY_MEASURE)('%s', (name) => {
    const random = randomStream(5)
    const measure = MEASURES[name === 'spacing of a point' ? 'spacing' : name]
    for (let i = 0; i < 50; i++) {
      const shapes = randomFeatures(name, (p) => p, random).map(
        (f): TrueFeature => ({ ...f, points: f.points.map(([x, y]) => truePoint(x, y)) }),
      )
      const a = 2 * Math.PI * random.uniform()
      const [dx, dy] = [500 * random.normal(), 500 * random.normal()]
      const moved = shapes.map((s) => ({
        ...s,
        points: s.points.map(([x, y]) =>
          truePoint(dx + Math.cos(a) * x - Math.sin(a) * y, dy + Math.sin(a) * x + Math.cos(a) * y),
        ),
      }))
      const [before, after] = [measure(shapes), measure(moved)]
      expect(Math.abs(after.value / before.value - 1)).toBeLessThan(1e-8)
      for (let p = 0; p < before.gradient.length; p += 2) {
        const size = (g: ArrayLike<number>): number => Math.hypot(g[p] ?? 0, g[p + 1] ?? 0)
        expect(Math.abs(size(after.gradient) - size(before.gradient))).toBeLessThan(1e-6 * before.value)
      }
    }
  })
})

describe('turning the scan changes neither value nor uncertainty of a dimension', () => {
  const REFERENCES: [XY, XY, number][] = [
    [[300, 400], [2500, 480], 220.4],
    [[350, 380], [420, 1900], 150.2],
    [[500, 1700], [2300, 500], 214.9],
    [[2400, 450], [2450, 1850], 138.6],
    [[320, 1880], [2500, 1800], 216.2],
    [[900, 300], [1500, 1900], 168.8],
    [[400, 900], [2400, 1300], 201.6],
  ]
  const minimum: Record<Exclude<MappingKind, 'two-axis'>, number> = { uniform: 1, affine: 3, projective: 7 }

  it.each(['uniform', 'affine', 'projective'] as const)('%s', (kind) => {
    const taken = (degrees: number, measure: Measure) => {
      const a = (degrees * Math.PI) / 180
      const turn = ([x, y]: XY): XY => [
        1500 + Math.cos(a) * (x - 1500) - Math.sin(a) * (y - 1000),
        1000 + Math.sin(a) * (x - 1500) + Math.cos(a) * (y - 1000),
      ]
      const sizes = REFERENCES.slice(0, minimum[kind]).flatMap(([p, q, size], i) =>
        lengthReference(`R${i}`, turn(p), turn(q), size, 0.1),
      )
      const { frame, ...view } = viewOf(kind, sizes, 0.2)
      // One and the same frame, turned with the scan.
      const [x, y] = turn([1400, 1100])
      const calibration = calibrate(
        { ...view, frame: { ...frame, origin: pixel(x, y), extent: 1200 } },
        sizes,
      )
      const corners = (
        [
          [600, 600],
          [2100, 700],
          [1900, 1600],
        ] as XY[]
      ).map(turn)
      const features =
        measure === 'area'
          ? [pathMark('T', corners, true)]
          : [pointMark('P', corners[0] as XY), pointMark('Q', corners[2] as XY)]
      return measureFeatures(calibration, measure, features)
    }
    for (const measure of ['distance', 'area'] as const) {
      const straight = taken(0, measure)
      for (const degrees of [1, 90, 137, 180]) {
        const turned = taken(degrees, measure)
        expect(Math.abs(turned.value / straight.value - 1)).toBeLessThan(1e-8)
        expect(Math.abs(standardUncertainty(turned) / standardUncertainty(straight) - 1)).toBeLessThan(1e-6)
      }
    }
  })
})
