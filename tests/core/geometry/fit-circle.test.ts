import { describe, expect, it } from 'vitest'
import { fitCircle } from '../../../src/core/geometry/fit-circle.ts'
import { type Point, pixel } from '../../../src/core/geometry/frames.ts'
import { GeometryError } from '../../../src/core/geometry/geometry-error.ts'
import { randomStream } from '../../../src/core/uncertainty/random.ts'

const DRAWS = 20_000
const DEGREE = Math.PI / 180

const arc = (centre: Point, radius: number, from: number, to: number, n: number): Point[] =>
  Array.from({ length: n }, (_, i) => {
    const a = (from + ((to - from) * i) / n) * DEGREE
    return pixel(centre[0] + radius * Math.cos(a), centre[1] + radius * Math.sin(a))
  })

describe('the circle through picked points', () => {
  it('is the circle itself when the points lie on it, whole or in part', () => {
    for (const [from, to, n] of [
      [0, 360, 3],
      [0, 360, 12],
      [20, 110, 5],
      [200, 230, 7],
    ] as const) {
      const circle = fitCircle(arc(pixel(3100, 2400), 480, from, to, n))
      expect(circle.centre[0]).toBeCloseTo(3100, 6)
      expect(circle.centre[1]).toBeCloseTo(2400, 6)
      expect(circle.radius).toBeCloseTo(480, 6)
      expect(circle.squares).toBeLessThan(1e-15)
    }
  })

  it('has the least sum of squared distances: no small shift or growth betters it', () => {
    const points: Point[] = arc(pixel(50, 60), 30, 0, 250, 9).map(([x, y], i) =>
      pixel(x + (i % 3) - 1, y - (i % 2)),
    )
    const { centre, radius, squares } = fitCircle(points)
    const of = (dx: number, dy: number, dr: number): number =>
      points.reduce(
        (s, [x, y]) => s + (Math.hypot(x - centre[0] - dx, y - centre[1] - dy) - radius - dr) ** 2,
        0,
      )
    expect(of(0, 0, 0)).toBeCloseTo(squares, 12)
    for (const e of [1e-3, -1e-3]) {
      for (const better of [of(e, 0, 0), of(0, e, 0), of(0, 0, e), of(e, e, e)]) {
        expect(better).toBeGreaterThan(squares)
      }
    }
  })

  for (const [name, from, to, n] of [
    ['a whole circle of 10 picks', 0, 360, 10],
    ['half a circle of 9 picks', 30, 210, 9],
    ['a quarter of 12 picks', 100, 190, 12],
  ] as const) {
    it(`scatters as it states, by simulation within 5 %: ${name}`, () => {
      const random = randomStream(1911)
      const [centre, radius, sigma] = [pixel(0, 0) as Point, 500, 0.7]
      const truth = arc(centre, radius, from, to, n)
      const { sensitivity } = fitCircle(truth)
      const stated = sensitivity.map((a) =>
        sensitivity.map((b) => sigma ** 2 * a.reduce((s, v, i) => s + v * (b[i] ?? 0), 0)),
      )
      const found = [0, 1, 2].map(() => [0, 0, 0])
      for (let k = 0; k < DRAWS; k++) {
        const c = fitCircle(
          truth.map(([x, y]): Point => pixel(x + sigma * random.normal(), y + sigma * random.normal())),
        )
        const error = [c.centre[0], c.centre[1], c.radius - radius]
        error.forEach((a, i) => {
          error.forEach((b, j) => {
            ;(found[i] as number[])[j] = (found[i]?.[j] ?? 0) + (a * b) / DRAWS
          })
        })
      }
      const ratios = stated.map((row, i) => Math.sqrt((found[i]?.[i] ?? 0) / (row[i] ?? 0)))
      console.log(`${name}: simulated over stated u, x y r: ${ratios.map((r) => r.toFixed(3)).join(' ')}`)
      for (const ratio of ratios) expect(Math.abs(ratio - 1)).toBeLessThan(0.05)
      const size = (i: number): number => Math.sqrt(stated[i]?.[i] ?? 0)
      stated.forEach((row, i) => {
        row.forEach((v, j) => {
          expect(Math.abs((found[i]?.[j] ?? 0) - v)).toBeLessThan(0.06 * size(i) * size(j))
        })
      })
    })
  }

  it('is refused in words for two points, for points on a line, for one point picked three times', () => {
    expect(() => fitCircle([pixel(0, 0)])).toThrow(/three picked points or more/)
    expect(() => fitCircle([])).toThrow(GeometryError)
    expect(() => fitCircle([pixel(0, 0), pixel(100, 200), pixel(300, 600), pixel(50, 100)])).toThrow(
      /one straight line/,
    )
    expect(() => fitCircle([pixel(7, 7), pixel(7, 7), pixel(7, 7)])).toThrow(GeometryError)
  })
})
