import { describe, expect, it } from 'vitest'
import { calibrate } from '../../../src/core/calibration/calibrate.ts'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import type { Mark } from '../../../src/core/job/model/types.ts'
import { type Feature, featureOf } from '../../../src/core/measuring/features/feature-of-mark.ts'
import { measureFeatures } from '../../../src/core/measuring/measure-features.ts'
import { standardUncertainty } from '../../../src/core/uncertainty/covariance.ts'
import { effectiveDof } from '../../../src/core/uncertainty/coverage.ts'
import { lengthReference, pointMark, viewOf, type XY } from './marks.ts'

const reference = lengthReference('R1', [0, 0], [4000, 0], 4000, 0, 0)
/** One pixel is one millimetre, exactly. */
const asDrawn = calibrate(viewOf('uniform', reference), reference)
const base = { id: 'P', sheet: 'S1', sigma: 1 } as const
const point = (more: object): Feature => featureOf({ ...base, how: 'stroke', kind: 'point', ...more } as Mark)
const from = (origin: XY, feature: Feature) =>
  measureFeatures(asDrawn, 'distance', [pointMark('O', origin, 0), feature])

describe('a point that was found on a stroke', () => {
  it('is uncertain along the stroke as its covariance says, and across it', () => {
    // Along a stroke at 30°: 1 px; across it: 0.05 px.
    const [c, s] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)]
    const covariance = [c * c + 0.0025 * s * s, (1 - 0.0025) * c * s, s * s + 0.0025 * c * c]
    const found = point({ pixel: [500, 500], covariance })
    const along = from([500 - 400 * c, 500 - 400 * s], found)
    const across = from([500 + 400 * s, 500 - 400 * c], found)
    expect(standardUncertainty(along)).toBeCloseTo(1, 9)
    expect(standardUncertainty(across)).toBeCloseTo(0.05, 9)
    expect(effectiveDof(across)).toBe(Number.POSITIVE_INFINITY)
    expect(new Set(found.picking.map(({ source }) => source.label))).toEqual(new Set(['picking of P']))
  })

  it('does not become surer by what is found in the same picture again: fit² + s²/n', () => {
    // x: 500, 501, 502: mean 501, s = 1, s²/3 = 1/3, with 2 degrees of freedom; y does not scatter.
    const again = point({
      pixel: [500, 500],
      covariance: [0.04, 0, 0.09],
      sigma: 0.3,
      repeats: [
        [501, 500],
        [502, 500],
      ],
    })
    const x = from([0, 500], again)
    expect(x.value).toBeCloseTo(501, 9)
    expect(standardUncertainty(x)).toBeCloseTo(Math.sqrt(0.04 + 1 / 3), 9)
    // Welch and Satterthwaite, JCGM 100:2008, eq. G.2b: u⁴ / ((s²/n)² / (n − 1)).
    expect(effectiveDof(x)).toBeCloseTo((0.04 + 1 / 3) ** 2 / ((1 / 3) ** 2 / 2), 6)
    expect(standardUncertainty(from([501, 0], again))).toBeCloseTo(0.3, 9)
  })

  it('stays as sure as the fit where the repeats agree to the last digit', () => {
    const same = point({
      pixel: [500, 500],
      covariance: [0.04, 0, 0.09],
      sigma: 0.3,
      repeats: [[500, 500]],
    })
    expect(standardUncertainty(from([0, 500], same))).toBeCloseTo(0.2, 9)
  })

  it('has the covariance of the mean of five observations of two correlated quantities (JCGM 100:2008, H.2)', () => {
    // Table H.2: amplitude V (V) and phase φ (rad) of five simultaneous observations; table H.3 and H.2.3 give
    // s(V) = 0.0032 V, s(φ) = 0.00075 rad of the means, and r(V, φ) = 0.86. In thousandths, as pixels.
    const volts = [5.007, 4.994, 5.005, 4.99, 4.999]
    const phase = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433]
    const [first, ...repeats] = volts.map((v, i) => pixel(1000 * v, 1000 * (phase[i] ?? 0)))
    const { picking, points } = point({ pixel: first, repeats, sigma: 1e-9 })
    expect(points[0]?.[0]).toBeCloseTo(4999, 1)
    expect(points[0]?.[1]).toBeCloseTo(1044.46, 2)
    const sum = (f: (m: (typeof picking)[number]) => number) => picking.reduce((s, m) => s + f(m), 0)
    const [sx, sy] = [Math.sqrt(sum(({ dx }) => dx * dx)), Math.sqrt(sum(({ dy }) => dy * dy))]
    expect(sx).toBeCloseTo(3.2, 1)
    expect(sy).toBeCloseTo(0.75, 2)
    // Table H.2 has r(V, I) = −0.36, r(V, φ) = 0.86, r(I, φ) = −0.65.
    expect(sum(({ dx, dy }) => dx * dy) / (sx * sy)).toBeCloseTo(0.86, 2)
  })
})

describe('a line that was picked again', () => {
  const line = (how: Mark['how'], pixels: Pixel[], repeats: Pixel[][]): Feature =>
    featureOf({ ...base, how, kind: 'line', pixels, repeats })
  const above = (feature: Feature) =>
    measureFeatures(asDrawn, 'spacing', [feature, pointMark('O', [500, 1000], 0)])
  const first: Pixel[] = [pixel(0, 0), pixel(1000, 2)]
  const second: Pixel[] = [pixel(0, 2), pixel(1000, 0)]

  it('by hand is fitted through all its pixels, with the sigma of their scatter about it', () => {
    // y = 0, 2 at either end: mean 1, level; squares 4, 2 degrees of freedom, so sigma² = 2 and u² = 2/4 in the middle.
    const spacing = above(line('hand', first, [second]))
    expect(spacing.value).toBeCloseTo(999, 9)
    expect(standardUncertainty(spacing)).toBeCloseTo(Math.sqrt(0.5), 6)
    expect(effectiveDof(spacing)).toBeCloseTo(2, 6)
  })

  it('runs the way it was picked first, whichever way it was picked again', () => {
    const { points } = line('hand', first, [[...second].reverse()])
    expect(points[0]?.[0]).toBeLessThan(points[1]?.[0] ?? 0)
  })

  it('found on a stroke is the mean of what was found; u² = fit² + s²/n', () => {
    // In the middle, x = 500, the lines found lie at y = 1, 1 and 4: mean 2, s² = 3, s²/3 = 1. The fit: 1/√2.
    const third: Pixel[] = [pixel(0, 4), pixel(1000, 4)]
    const spacing = above(line('stroke', first, [second, third]))
    expect(spacing.value).toBeCloseTo(998, 2)
    expect(standardUncertainty(spacing)).toBeCloseTo(Math.sqrt(0.5 + 1), 4)
    expect(effectiveDof(spacing)).toBeCloseTo(1.5 ** 2 / (1 / 2), 2)
  })

  it('found in the same place each time is as sure as one fit', () => {
    const level: Pixel[] = [pixel(0, 1), pixel(1000, 1)]
    expect(standardUncertainty(above(line('stroke', level, [level, level])))).toBeCloseTo(Math.sqrt(0.5), 6)
  })
})

describe('a circle that was picked again', () => {
  const round = (r: number, n: number, turn = 0, squash = 1): Pixel[] =>
    Array.from({ length: n }, (_, i): Pixel => {
      const a = turn + (2 * Math.PI * i) / n
      return pixel(500 + r * Math.cos(a), 500 + squash * r * Math.sin(a))
    })
  const circle = (how: Mark['how'], pixels: Pixel[], repeats: Pixel[][], sigma = 1) =>
    measureFeatures(asDrawn, 'radius', [featureOf({ ...base, how, sigma, kind: 'circle', pixels, repeats })])

  it('found on a stroke is the mean of what was found; u² = fit² + s²/n', () => {
    // Radii 99, 100 and 101: s = 1. Twelve points round it, each to 0.1 px: 0.1/√12 of the radius.
    const radius = circle('stroke', round(99, 12), [round(100, 12), round(101, 12)], 0.1)
    expect(radius.value).toBeCloseTo(100, 9)
    expect(standardUncertainty(radius)).toBeCloseTo(Math.sqrt(0.01 / 12 + 1 / 3), 9)
  })

  it('by hand has the sigma of its scatter about it', () => {
    // Eight at 101 and eight at 99 in turn: squares 16 about the mean circle, 16 − 5 degrees of freedom.
    const radius = circle('hand', round(101, 8), [round(99, 8, Math.PI / 8)])
    expect(radius.value).toBeCloseTo(100, 6)
    expect(standardUncertainty(radius)).toBeCloseTo(Math.sqrt(16 / 11 / 16), 6)
    expect(effectiveDof(radius)).toBeCloseTo(11, 6)
  })

  it('is not less sure because the sheet shrank more one way', () => {
    const radius = circle('hand', round(300, 8, 0, 0.99), [round(300, 8, Math.PI / 8, 0.99)])
    expect(standardUncertainty(radius)).toBeLessThan(0.05)
  })
})

describe('a path that was picked again', () => {
  const square: Pixel[] = [pixel(0, 0), pixel(100, 0), pixel(100, 100), pixel(0, 100)]
  const path = (repeats: Pixel[][]): Feature =>
    featureOf({ ...base, how: 'hand', kind: 'path', closed: true, pixels: square, repeats })

  it('is point by point the mean, from whichever corner and whichever way it was begun', () => {
    const moved = square.map(([x, y]): Pixel => pixel(x + 2, y))
    const turned = [...moved.slice(2), ...moved.slice(0, 2)].reverse()
    for (const again of [moved, turned]) {
      const { points, scatter } = path([again])
      expect(points).toEqual([
        [1, 0],
        [101, 0],
        [101, 100],
        [1, 100],
      ])
      // Each x is 1 px from the mean, twice four of them; 2 (n − 1) m = 8 degrees of freedom.
      expect(scatter).toMatchObject({ squares: 8, dof: 8 })
    }
  })

  it('has no mean where a pick has more corners than another', () => {
    expect(() => path([square.slice(0, 3)])).toThrow(
      'Mark P: It was picked with 4 points once and with 3 another time, so there is no mean of them: every pick needs the same corners.',
    )
  })
})
