import { describe, expect, it } from 'vitest'
import { type Point, pixel } from '../../../src/core/geometry/frames.ts'
import { crossesItself, type Measured, pathLength, polygonArea } from '../../../src/core/geometry/polygon.ts'
import { randomStream } from '../../../src/core/uncertainty/random.ts'

const H = 1e-4

function worstGradient(points: Point[], measure: (points: readonly Point[]) => Measured): number {
  const { gradient } = measure(points)
  const moved = (k: number, by: number): number =>
    measure(points.map(([x, y], i): Point => pixel(2 * i === k ? x + by : x, 2 * i + 1 === k ? y + by : y)))
      .value
  return Math.max(...gradient.map((g, k) => Math.abs(g - (moved(k, H) - moved(k, -H)) / (2 * H))))
}

describe('area and length of a path', () => {
  const square: Point[] = [pixel(0, 0), pixel(4, 0), pixel(4, 3), pixel(0, 3)]

  it('of a rectangle are width times height, its sides, and its sides but one when open', () => {
    expect(polygonArea(square).value).toBe(12)
    expect(polygonArea([...square].reverse()).value).toBe(-12)
    expect(pathLength(square, true).value).toBe(14)
    expect(pathLength(square, false).value).toBe(11)
  })

  it('of a regular polygon of 96 sides are what Archimedes bounds the circle by', () => {
    const n = 96
    const ring = Array.from({ length: n }, (_, i): Point => {
      const a = (2 * Math.PI * i) / n
      return pixel(Math.cos(a), Math.sin(a))
    })
    // Measurement of a Circle, proposition 3: the inscribed polygon of 96 sides exceeds 3 10/71 diameters.
    expect(pathLength(ring, true).value / 2).toBeGreaterThan(3 + 10 / 71)
    expect(pathLength(ring, true).value / 2).toBeLessThan(3 + 1 / 7)
    expect(polygonArea(ring).value).toBeCloseTo((n / 2) * Math.sin((2 * Math.PI) / n), 12)
  })

  it('change with each coordinate as finite differences say', () => {
    const random = randomStream(7)
    for (let trial = 0; trial < 20; trial++) {
      const points = Array.from(
        { length: 3 + (trial % 5) },
        (): Point => pixel(100 * random.normal(), 100 * random.normal()),
      )
      expect(worstGradient(points, polygonArea)).toBeLessThan(1e-6)
      expect(worstGradient(points, (p) => pathLength(p, true))).toBeLessThan(1e-6)
      expect(worstGradient(points, (p) => pathLength(p, false))).toBeLessThan(1e-6)
    }
  })

  it('a bow tie crosses itself, a rectangle and an L do not', () => {
    const [a, b, c, d] = square as [Point, Point, Point, Point]
    expect(crossesItself([a, c, b, d])).toBe(true)
    expect(crossesItself(square)).toBe(false)
    expect(
      crossesItself([pixel(0, 0), pixel(3, 0), pixel(3, 1), pixel(1, 1), pixel(1, 3), pixel(0, 3)]),
    ).toBe(false)
  })
})
