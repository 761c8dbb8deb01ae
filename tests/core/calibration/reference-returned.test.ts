import { describe, expect, it } from 'vitest'
import { calibrate } from '../../../src/core/calibration/calibrate.ts'
import {
  diameterReference,
  distanceReference,
  rectangleReference,
  type StatedSize,
} from '../../../src/core/calibration/reference.ts'
import type { Feature } from '../../../src/core/measuring/features/feature-of-mark.ts'
import { measureFeatures } from '../../../src/core/measuring/measure-features.ts'
import { uncertaintyBudget } from '../../../src/core/uncertainty/budget.ts'
import { standardUncertainty } from '../../../src/core/uncertainty/covariance.ts'
import { randomStream } from '../../../src/core/uncertainty/random.ts'
import { exact, measured, type Uncertain } from '../../../src/core/uncertainty/uncertain.ts'
import { circleMark, pointMark, viewOf, type XY } from '../measuring/marks.ts'

const point = (id: string, pixel: XY): Feature => pointMark(id, pixel, 1.3)

function expectReturned(x: Uncertain, size: number, u: number): void {
  expect(Math.abs(x.value / size - 1)).toBeLessThan(1e-9)
  expect(Math.abs(standardUncertainty(x) - u)).toBeLessThan(1e-8 * size)
  if (u > 0) expect(uncertaintyBudget(x)[0]?.share).toBeGreaterThan(1 - 1e-9)
}

describe('a dimension between the very marks of the only reference is that reference, with its uncertainty', () => {
  for (const draughting of [0, 0.26]) {
    for (const u of [0, 0.15]) {
      const name = `${draughting === 0 ? 'no' : 'with'} draughting error, stated u ${u} mm`

      it(`uniform, a distance: ${name}`, () => {
        const [a, b] = [point('A', [210, 340]), point('B', [1890, 1120])]
        const sizes = distanceReference('R1', a, b, measured(300, u, 'stated size'))
        const calibration = calibrate(viewOf('uniform', sizes, draughting), sizes)
        expectReturned(measureFeatures(calibration, 'distance', [a, b]), 300, u)
        expectReturned(measureFeatures(calibration, 'distance', [b, a]), 300, u)
      })

      it(`uniform, a diameter: ${name}`, () => {
        const ring = Array.from({ length: 9 }, (_, i): XY => {
          const t = (2 * Math.PI * i) / 9
          return [900 + 400 * Math.cos(t) + (i % 3), 700 + 400 * Math.sin(t) - (i % 2)]
        })
        const circle = circleMark('K', ring, 1.3)
        const sizes = diameterReference('R1', circle, measured(160, u, 'stated size'))
        const calibration = calibrate(viewOf('uniform', sizes, draughting), sizes)
        expectReturned(measureFeatures(calibration, 'diameter', [circle]), 160, u)
        expectReturned(measureFeatures(calibration, 'radius', [circle]), 80, u / 2)
      })

      it(`two-axis and affine, each of as many distances as there are scales: ${name}`, () => {
        const ends: [XY, XY, number][] = [
          [[200, 300], [1900, 330], 301],
          [[240, 250], [180, 1500], 218],
          [[300, 1400], [1700, 280], 322],
        ]
        for (const kind of ['two-axis', 'affine'] as const) {
          const used = ends.slice(0, kind === 'affine' ? 3 : 2)
          const marks = used.map(([p, q], i) => [point(`A${i}`, p), point(`B${i}`, q)] as const)
          const sizes = marks.flatMap(([a, b], i): StatedSize[] =>
            distanceReference(`R${i}`, a, b, measured(used[i]?.[2] ?? 0, u, `stated size ${i}`)),
          )
          const calibration = calibrate(viewOf(kind, sizes, draughting, 1.5), sizes)
          marks.forEach(([a, b], i) => {
            expectReturned(measureFeatures(calibration, 'distance', [a, b]), used[i]?.[2] ?? 0, u)
          })
        }
      })

      it(`projective, all four sides of a rectangle: ${name}`, () => {
        const corners = [
          point('A', [300, 280]),
          point('B', [2210, 410]),
          point('C', [2050, 1630]),
          point('D', [380, 1420]),
        ] as const
        const [a, b, c, d] = corners
        const sizes = rectangleReference(
          'R1',
          [a, b, c, d],
          measured(380, u, 'width'),
          measured(240, u, 'height'),
          exact(0),
        )
        const calibration = calibrate(viewOf('projective', sizes, draughting), sizes)
        const side = (p: Feature, q: Feature): Uncertain => measureFeatures(calibration, 'distance', [p, q])
        for (const width of [side(a, b), side(c, d)]) expectReturned(width, 380, u)
        for (const height of [side(b, c), side(d, a)]) expectReturned(height, 240, u)
      })
    }
  }
})

describe('a mark shared between a reference and a dimension', () => {
  it('is one error, not two: u is what simulated sheets scatter by', () => {
    const [sigma, u] = [3, 0.4]
    const [A, B, C]: [XY, XY, XY] = [
      [200, 500],
      [1200, 500],
      [1700, 500],
    ]
    const random = randomStream(12)
    const noisy = ([x, y]: XY): XY => [x + sigma * random.normal(), y + sigma * random.normal()]
    const taken = (a: XY, b: XY, c: XY, stated: number, from: 'A' | 'B'): Uncertain => {
      const [ma, mb, mc] = [pointMark('A', a, sigma), pointMark('B', b, sigma), pointMark('C', c, sigma)]
      const sizes = distanceReference('R1', ma, mb, measured(stated, u, 'stated size'))
      const calibration = calibrate(viewOf('uniform', sizes), sizes)
      return measureFeatures(calibration, 'distance', [from === 'A' ? ma : mb, mc])
    }
    for (const from of ['A', 'B'] as const) {
      const stated = standardUncertainty(taken(A, B, C, 200, from))
      const n = 8000
      let [sum, squares] = [0, 0]
      for (let i = 0; i < n; i++) {
        const { value } = taken(noisy(A), noisy(B), noisy(C), 200 + u * random.normal(), from)
        sum += value
        squares += value * value
      }
      const scatter = Math.sqrt((squares - (sum * sum) / n) / (n - 1))
      console.log(`shared mark ${from}: stated u ${stated.toFixed(4)}, simulated ${scatter.toFixed(4)} mm`)
      expect(Math.abs(scatter / stated - 1)).toBeLessThan(0.03)
    }
  })

  it('has the u worked out by hand', () => {
    // s = D/(b − a), x = s·(c − a): ∂x/∂a = s(x/D − 1), ∂x/∂b = −s·x/D, ∂x/∂c = s, ∂x/∂D = x/D.
    const [ma, mb, mc] = [
      pointMark('A', [200, 500], 3),
      pointMark('B', [1200, 500], 3),
      pointMark('C', [1700, 500], 3),
    ]
    const sizes = distanceReference('R1', ma, mb, measured(200, 0.4, 'stated size'))
    const x = measureFeatures(calibrate(viewOf('uniform', sizes), sizes), 'distance', [ma, mc])
    expect(x.value).toBeCloseTo(300, 9)
    expect(standardUncertainty(x)).toBeCloseTo(Math.hypot(0.6 * 0.5, 0.6 * 1.5, 0.6, 0.4 * 1.5), 8)
  })
})
