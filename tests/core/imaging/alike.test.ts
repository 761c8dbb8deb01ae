import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import { findPoint, type GreyWindow } from '../../../src/core/imaging/index.ts'
import { caseStream } from './simulate/case-stream.ts'
import { someLook } from './simulate/look.ts'
import { type PointCase, pointCase } from './simulate/point-case.ts'

/** The same cases each time: whether a faint stroke is just found is no matter of these properties. */
const RUNS = { numRuns: 20, seed: 71 }
const seeds = fc.integer({ min: 1, max: 1_000_000 })

/** A stroke that leaves the room to add to its grey values and to take away. */
async function drawn(seed: number): Promise<PointCase> {
  const look = someLook('blur', caseStream(seed))
  return pointCase(
    { ...look, contrast: 90, ground: look.dark ? 180 : 70, noise: 4, slope: [0, 0] },
    caseStream(seed + 1),
  )
}

function distance(window: GreyWindow, rough: Pixel, from: Pixel, direction: number): number {
  const found = findPoint(window, rough)
  fc.pre(found.kind !== 'none')
  return Math.abs(
    (found.pixel[1] - from[1]) * Math.cos(direction) - (found.pixel[0] - from[0]) * Math.sin(direction),
  )
}

function pointed(c: PointCase): Pixel {
  const found = findPoint(c.window, c.rough)
  fc.pre(found.kind !== 'none')
  return found.pixel
}

const mapped = (
  w: GreyWindow,
  to: (x: number, y: number) => [number, number],
  value = (v: number) => v,
): GreyWindow => {
  const data = new Uint8Array(w.data.length)
  for (let y = 0; y < w.height; y++) {
    for (let x = 0; x < w.width; x++) {
      const [u, v] = to(x, y)
      data[v * w.width + u] = value(w.data[y * w.width + x] as number)
    }
  }
  return { ...w, data }
}

/** Far below the uncertainty of any of these picks: what the search may differ by when it starts elsewhere. */
const SAME = 0.004

describe('a point on a stroke is the same', () => {
  it('wherever in the scan the window was cut', () =>
    fc.assert(
      fc.asyncProperty(
        seeds,
        fc.integer({ max: 9000, min: 0 }),
        fc.integer({ max: 9000, min: 0 }),
        async (seed, left, top) => {
          const c = await drawn(seed)
          const [x, y] = pointed(c)
          const far = distance(
            { ...c.window, left, top },
            pixel(c.rough[0] + left, c.rough[1] + top),
            pixel(x + left, y + top),
            c.direction,
          )
          expect(far).toBeLessThan(1e-6)
        },
      ),
      RUNS,
    ))

  it('when the scan is turned by a right angle', () =>
    fc.assert(
      fc.asyncProperty(seeds, async (seed) => {
        const c = await drawn(seed)
        const [x, y] = pointed(c)
        const size = c.window.width
        const turned = mapped(c.window, (u, v) => [size - 1 - v, u])
        const far = distance(
          turned,
          pixel(size - c.rough[1], c.rough[0]),
          pixel(size - y, x),
          c.direction + Math.PI / 2,
        )
        expect(far).toBeLessThan(SAME)
      }),
      RUNS,
    ))

  it('when the scan is mirrored', () =>
    fc.assert(
      fc.asyncProperty(seeds, async (seed) => {
        const c = await drawn(seed)
        const [x, y] = pointed(c)
        const size = c.window.width
        const mirrored = mapped(c.window, (u, v) => [size - 1 - u, v])
        const far = distance(
          mirrored,
          pixel(size - c.rough[0], c.rough[1]),
          pixel(size - x, y),
          Math.PI - c.direction,
        )
        expect(far).toBeLessThan(SAME)
      }),
      RUNS,
    ))

  it('in its negative, and on a darker or lighter ground', () =>
    fc.assert(
      fc.asyncProperty(seeds, fc.integer({ min: -40, max: 40 }), async (seed, more) => {
        const c = await drawn(seed)
        const place = pointed(c)
        const same = (u: number, v: number): [number, number] => [u, v]
        const negative = mapped(c.window, same, (v) => 255 - v)
        expect(distance(negative, c.rough, place, c.direction)).toBeLessThan(SAME)
        expect(
          distance(
            mapped(c.window, same, (v) => v + more),
            c.rough,
            place,
            c.direction,
          ),
        ).toBeLessThan(SAME)
      }),
      RUNS,
    ))
})
