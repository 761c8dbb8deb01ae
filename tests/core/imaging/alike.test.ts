import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import { findPoint, type GreyWindow } from '../../../src/core/imaging/index.ts'
import { caseStream } from './simulate/case-stream.ts'
import { someLook } from './simulate/look.ts'
import { type PointCase, pointCase } from './simulate/point-case.ts'

/**
 * The same cases each time: whether a faint stroke is just found is no matter of these properties, nor whether a choice
 * in the search is nearly a tie, which is counted below over any cases.
 */
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

/** How far a pixel is from the stroke through another, pixels. */
const across = ([x, y]: Pixel, from: Pixel, direction: number): number =>
  Math.abs((y - from[1]) * Math.cos(direction) - (x - from[0]) * Math.sin(direction))

function distance(window: GreyWindow, rough: Pixel, from: Pixel, direction: number): number {
  const found = findPoint(window, rough)
  fc.pre(found.kind !== 'none')
  return across(found.pixel, from, direction)
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

/** A picture seen otherwise, and where in it is what was at a pixel. */
interface Way {
  picture: (w: GreyWindow) => GreyWindow
  place: (at: Pixel, size: number) => Pixel
  direction: (of: number) => number
}

const WAYS: Readonly<Record<string, Way>> = {
  'turned by a right angle': {
    picture: (w) => mapped(w, (x, y) => [w.width - 1 - y, x]),
    place: ([x, y], size) => pixel(size - y, x),
    direction: (of) => of + Math.PI / 2,
  },
  mirrored: {
    picture: (w) => mapped(w, (x, y) => [w.width - 1 - x, y]),
    place: ([x, y], size) => pixel(size - x, y),
    direction: (of) => Math.PI - of,
  },
}

const seen = ({ window, rough }: PointCase, { picture, place }: Way): [GreyWindow, Pixel] => [
  picture(window),
  place(rough, window.width),
]

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

  it.each(Object.entries(WAYS))('when the scan is %s', (_, way) =>
    fc.assert(
      fc.asyncProperty(seeds, async (seed) => {
        const c = await drawn(seed)
        const place = way.place(pointed(c), c.window.width)
        expect(distance(...seen(c, way), place, way.direction(c.direction))).toBeLessThan(SAME)
      }),
      RUNS,
    ),
  )

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

const CASES = 60
/** Some 2 in 100 of 2,500 turned pictures came out a tenth of their uncertainty apart or more, 1 in 1,000 more than it. */
const MOST_APART = 4
const MOST_BEYOND = 1

describe('where a choice in the search is nearly a tie, so that the last digit settles it', () => {
  it.each(Object.entries(WAYS))('few points are other ones when the scan is %s', async (_, way) => {
    const apart: number[] = []
    for (const seed of fc.sample(seeds, { numRuns: CASES, seed: 72 })) {
      const c = await drawn(seed)
      const found = findPoint(c.window, c.rough)
      if (found.kind !== 'point') continue
      const again = findPoint(...seen(c, way))
      const place = way.place(found.pixel, c.window.width)
      apart.push(
        again.kind === 'point'
          ? across(again.pixel, place, way.direction(c.direction)) / found.across
          : Number.POSITIVE_INFINITY,
      )
    }
    expect(apart.length).toBeGreaterThan(CASES / 2)
    expect(apart.filter((one) => one > 0.1).length).toBeLessThanOrEqual(MOST_APART)
    expect(apart.filter((one) => one > 1).length).toBeLessThanOrEqual(MOST_BEYOND)
  })
})
