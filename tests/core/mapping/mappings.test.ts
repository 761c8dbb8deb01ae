import { describe, expect, it } from 'vitest'
import { radians } from '../../../src/core/geometry/angle-units.ts'
import { type Pixel, pixel, truePoint } from '../../../src/core/geometry/frames.ts'
import { GeometryError } from '../../../src/core/geometry/geometry-error.ts'
import type { MappingKind } from '../../../src/core/job/model/types.ts'
import { MAPPINGS } from '../../../src/core/mapping/mappings.ts'
import type { ViewFrame } from '../../../src/core/mapping/view-frame.ts'
import { type RandomStream, randomStream } from '../../../src/core/uncertainty/random.ts'
import { randomTheta } from './random-theta.ts'

const POINTS = 500

const KINDS = Object.keys(MAPPINGS) as MappingKind[]

const anyFrame = (r: RandomStream): ViewFrame => ({
  origin: pixel(1900 + 300 * r.normal(), 1400 + 300 * r.normal()),
  extent: 600 + 900 * r.uniform(),
  grain: radians(2 * Math.PI * (r.uniform() - 0.5)),
})

/** A place within the extent, where tilts of 0.05 leave every plane well before its horizon. */
const anyPixel = ({ origin, extent }: ViewFrame, r: RandomStream): Pixel =>
  pixel(origin[0] + extent * (2 * r.uniform() - 1), origin[1] + extent * (2 * r.uniform() - 1))

describe.each(KINDS)('the %s mapping', (kind) => {
  const mapping = MAPPINGS[kind]

  it('is found in the index by its own kind, with a name of its own for each parameter', () => {
    expect(mapping.kind).toBe(kind)
    const names = mapping.parameters.map(({ name }) => name)
    expect(new Set(names).size).toBe(names.length)
    expect(mapping.start(0.2)).toHaveLength(names.length)
  })

  it('starts as one scale all over', () => {
    const random = randomStream(1)
    for (let i = 0; i < POINTS; i++) {
      const frame = anyFrame(random)
      const [p, q] = [anyPixel(frame, random), anyPixel(frame, random)]
      const [a, b] = [p, q].map((at) => mapping.apply(mapping.start(0.2), at, frame).point)
      const size = Math.hypot((a?.[0] ?? 0) - (b?.[0] ?? 0), (a?.[1] ?? 0) - (b?.[1] ?? 0))
      expect(size).toBeCloseTo(0.2 * Math.hypot(p[0] - q[0], p[1] - q[1]), 9)
    }
  })

  it('takes its inverse back to where one began, pixels to 1e-9', () => {
    const random = randomStream(2)
    let worst = 0
    for (let i = 0; i < POINTS; i++) {
      const frame = anyFrame(random)
      const theta = randomTheta(kind, random)
      const at = anyPixel(frame, random)
      const back = mapping.invert(theta, mapping.apply(theta, at, frame).point, frame)
      worst = Math.max(worst, Math.abs(back[0] - at[0]), Math.abs(back[1] - at[1]))
    }
    expect(worst).toBeLessThan(1e-9)
  })

  it('is taken back by its inverse, millimetres to 1e-9', () => {
    const random = randomStream(3)
    let worst = 0
    for (let i = 0; i < POINTS; i++) {
      const frame = anyFrame(random)
      const theta = randomTheta(kind, random)
      const truth = truePoint(180 * (random.uniform() - 0.5), 180 * (random.uniform() - 0.5))
      const { point } = mapping.apply(theta, mapping.invert(theta, truth, frame), frame)
      worst = Math.max(worst, Math.abs(point[0] - truth[0]), Math.abs(point[1] - truth[1]))
    }
    expect(worst).toBeLessThan(1e-9)
  })

  it('has the derivatives that finite differences give', () => {
    const random = randomStream(4)
    for (let i = 0; i < POINTS; i++) {
      const frame = anyFrame(random)
      const theta = randomTheta(kind, random)
      const at = anyPixel(frame, random)
      const { byPixel, byParameter } = mapping.apply(theta, at, frame)

      const step = 1e-2
      const moved = (dx: number, dy: number) =>
        mapping.apply(theta, pixel(at[0] + dx, at[1] + dy), frame).point
      const [right, left, down, up] = [moved(step, 0), moved(-step, 0), moved(0, step), moved(0, -step)]
      const differences = [0, 1].flatMap((axis) => [
        ((right[axis] ?? 0) - (left[axis] ?? 0)) / (2 * step),
        ((down[axis] ?? 0) - (up[axis] ?? 0)) / (2 * step),
      ])
      byPixel.forEach((d, k) => {
        expect(Math.abs(d - (differences[k] ?? Number.NaN))).toBeLessThan(1e-8)
      })

      expect(byParameter).toHaveLength(2 * theta.length)
      theta.forEach((_, k) => {
        const h = 1e-5
        const changed = (by: number) =>
          mapping.apply(
            theta.map((t, j) => (j === k ? t + by : t)),
            at,
            frame,
          ).point
        const [more, less] = [changed(h), changed(-h)]
        for (const axis of [0, 1] as const) {
          const numeric = (more[axis] - less[axis]) / (2 * h)
          expect(Math.abs((byParameter[2 * k + axis] ?? Number.NaN) - numeric)).toBeLessThan(1e-5)
        }
      })
    }
  })

  it('says so where a scale is nothing, and no pixel is to be found', () => {
    const frame = anyFrame(randomStream(5))
    const flat = mapping.parameters.map(() => 0)
    expect(() => mapping.invert(flat, truePoint(10, 20), frame)).toThrow(GeometryError)
  })

  it('refuses fewer numbers than it has parameters', () => {
    const frame = anyFrame(randomStream(6))
    expect(() => mapping.apply(mapping.start(0.2).slice(1), frame.origin, frame)).toThrow(RangeError)
  })
})

describe('beyond the horizon of a tilted plane', () => {
  const frame: ViewFrame = { origin: pixel(1000, 800), extent: 500, grain: radians(0) }
  const theta = [0.2, 0, 0.2, 0.5, 0]

  it('no pixel has a true point', () => {
    expect(() => MAPPINGS.projective.apply(theta, pixel(-200, 800), frame)).toThrow(/horizon/)
  })

  it('no true point has a pixel: what the formula gives lies behind the one who looks', () => {
    // Along x the true points tend to 0.2 · 500 / 0.5 = 200 mm, and come back from beyond it behind the horizon.
    expect(() => MAPPINGS.projective.invert(theta, truePoint(199, 0), frame)).not.toThrow()
    expect(() => MAPPINGS.projective.invert(theta, truePoint(201, 0), frame)).toThrow(/horizon/)
    expect(() => MAPPINGS.projective.invert(theta, truePoint(200, 0), frame)).toThrow(GeometryError)
  })
})
