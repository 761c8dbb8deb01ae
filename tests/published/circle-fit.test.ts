import { describe, expect, it } from 'vitest'
import { fitCircle } from '../../src/core/geometry/fit-circle.ts'
import { type Point, pixel } from '../../src/core/geometry/frames.ts'

/** Gander, Golub & Strebel, "Least-squares fitting of circles and ellipses", BIT 34 (1994): the six points. */
const SIX_POINTS: Point[] = [pixel(1, 7), pixel(2, 6), pixel(5, 8), pixel(7, 7), pixel(9, 5), pixel(3, 7)]

describe('the circle through six points of Gander, Golub & Strebel (1994), geometric fit', () => {
  const circle = fitCircle(SIX_POINTS)

  it('has its centre at (4.7398, 2.9835)', () => {
    expect(circle.centre[0].toFixed(4)).toBe('4.7398')
    expect(circle.centre[1].toFixed(4)).toBe('2.9835')
  })

  it('has the radius 4.7142', () => {
    expect(circle.radius.toFixed(4)).toBe('4.7142')
  })

  it('leaves a residual sum of squares of 1.2276', () => {
    expect(circle.squares.toFixed(4)).toBe('1.2276')
  })

  it('is the same circle wherever the points are listed from, and after turning the sheet by a right angle', () => {
    const turned = fitCircle([...SIX_POINTS].reverse().map(([x, y]): Point => pixel(-y, x)))
    expect(turned.radius).toBeCloseTo(circle.radius, 6)
    expect(turned.centre[0]).toBeCloseTo(-circle.centre[1], 6)
    expect(turned.centre[1]).toBeCloseTo(circle.centre[0], 6)
  })
})
