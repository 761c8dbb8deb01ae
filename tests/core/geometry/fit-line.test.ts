import { describe, expect, it } from 'vitest'
import { fitLine } from '../../../src/core/geometry/fit-line.ts'
import { type Point, pixel } from '../../../src/core/geometry/frames.ts'
import { GeometryError } from '../../../src/core/geometry/geometry-error.ts'
import { randomStream } from '../../../src/core/uncertainty/random.ts'

const DRAWS = 20_000

describe('the line through picked points', () => {
  it('is the line itself when the points lie on it, in every direction', () => {
    for (let degrees = 0; degrees < 360; degrees += 7.5) {
      const a = (degrees * Math.PI) / 180
      const at = (t: number): Point => pixel(900 + t * Math.cos(a), 700 + t * Math.sin(a))
      const line = fitLine([-300, -40, 15, 260].map(at))
      expect(line.direction[0]).toBeCloseTo(Math.cos(a), 12)
      expect(line.direction[1]).toBeCloseTo(Math.sin(a), 12)
      expect(line.squares).toBeCloseTo(0, 12)
      expect(line.ends[0][0]).toBeCloseTo(at(-300)[0], 9)
      expect(line.ends[1][1]).toBeCloseTo(at(260)[1], 9)
    }
  })

  it('runs from the first pick towards the last, with its ends in that order', () => {
    const line = fitLine([pixel(500, 10), pixel(90, 12), pixel(300, 9), pixel(80, 10)])
    expect(line.direction[0]).toBeLessThan(0)
    expect(line.ends[0][0]).toBeGreaterThan(line.ends[1][0])
  })

  it('has the least sum of squared distances: no small turn or shift betters it', () => {
    const points: Point[] = [pixel(0, 0.4), pixel(10, -0.7), pixel(20, 0.9), pixel(30, 0.1), pixel(40, -0.5)]
    const line = fitLine(points)
    const squares = (turn: number, shift: number): number => {
      const [dx, dy] = line.direction
      const [ex, ey] = [dx * Math.cos(turn) - dy * Math.sin(turn), dy * Math.cos(turn) + dx * Math.sin(turn)]
      return points.reduce(
        (s, [x, y]) => s + ((y - line.centroid[1]) * ex - (x - line.centroid[0]) * ey - shift) ** 2,
        0,
      )
    }
    expect(squares(0, 0)).toBeCloseTo(line.squares, 12)
    for (const [turn, shift] of [
      [1e-3, 0],
      [-1e-3, 0],
      [0, 1e-3],
      [0, -1e-3],
    ] as const) {
      expect(squares(turn, shift)).toBeGreaterThan(line.squares)
    }
  })

  it('scatters as it states, offset and direction, by simulation within 5 %', () => {
    const random = randomStream(41)
    const sigma = 0.8
    const a = 0.7
    const [nx, ny] = [-Math.sin(a), Math.cos(a)]
    const t = [-250, -130, -20, 60, 160, 270]
    const mean = t.reduce((s, v) => s + v, 0) / t.length
    const truth = t.map((v): Point => pixel(400 + v * Math.cos(a), 300 + v * Math.sin(a)))
    const stated = fitLine(truth)
    let [offset, rotation, cross] = [0, 0, 0]
    for (let i = 0; i < DRAWS; i++) {
      const line = fitLine(
        truth.map(([x, y]): Point => pixel(x + sigma * random.normal(), y + sigma * random.normal())),
      )
      const turn = line.direction[1] * Math.cos(a) - line.direction[0] * Math.sin(a)
      const across =
        (line.centroid[0] - 400 - mean * Math.cos(a)) * nx +
        (line.centroid[1] - 300 - mean * Math.sin(a)) * ny
      offset += across ** 2 / DRAWS
      rotation += turn ** 2 / DRAWS
      cross += (across * turn) / DRAWS
    }
    const [ro, rr] = [
      Math.sqrt(offset) / (sigma * stated.offset),
      Math.sqrt(rotation) / (sigma * stated.rotation),
    ]
    console.log(`line: simulated over stated, offset ${ro.toFixed(3)}, rotation ${rr.toFixed(3)}`)
    expect(Math.abs(ro - 1)).toBeLessThan(0.05)
    expect(Math.abs(rr - 1)).toBeLessThan(0.05)
    expect(Math.abs(cross / Math.sqrt(offset * rotation))).toBeLessThan(0.03)
  })

  it('is refused in words for one point, for none, and for one point picked twice', () => {
    expect(() => fitLine([])).toThrow(GeometryError)
    expect(() => fitLine([pixel(1, 2)])).toThrow(/two picked points or more/)
    expect(() => fitLine([pixel(5, 5), pixel(5, 5), pixel(5, 5)])).toThrow(/one and the same/)
  })
})
