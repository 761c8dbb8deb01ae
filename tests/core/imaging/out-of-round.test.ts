import { beforeAll, describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import {
  findCircle,
  type OutOfRound,
  outOfRound,
  type StrokeCircle,
} from '../../../src/core/imaging/index.ts'
import { caseStream } from './simulate/case-stream.ts'
import { type Look, PLAIN_LOOK } from './simulate/look.ts'
import { scanOf } from './simulate/scan-of.ts'
import { ring } from './simulate/shapes.ts'

const LOOK: Look = { ...PLAIN_LOOK, width: 4, contrast: 140, ground: 220, noise: 8 }

interface Case {
  found: StrokeCircle
  centre: Pixel
}

/** A circle drawn on paper that has since shrunk from left to right, its height kept. */
async function shrunkCircle(radius: number, shrunk: number, seed: number): Promise<Case> {
  const random = caseStream(seed)
  const size = Math.ceil(2 * radius + 60)
  const centre: Pixel = pixel(size / 2 + random.uniform(), size / 2 + random.uniform())
  const drawn = ring(pixel(0, 0), radius, LOOK.width)
  const scan = await scanOf(
    {
      width: size,
      height: size,
      strokes: [(x, y, blur) => drawn((x - centre[0]) / (1 - shrunk), y - centre[1], blur)],
    },
    LOOK,
    random,
  )
  const pick = (a: number): Pixel =>
    pixel(
      centre[0] + radius * Math.cos(a) + random.uniform(),
      centre[1] + radius * Math.sin(a) - random.uniform(),
    )
  const found = findCircle(scan.window, [pick(0.3), pick(2.4), pick(4.5)])
  if (found.kind === 'none') throw new Error(found.because.code)
  return { found, centre }
}

const told = ({ profiles }: StrokeCircle): OutOfRound | null =>
  outOfRound(profiles.filter(({ kept }) => kept).map(({ centre }) => centre))

describe.each([
  [20, 0.01],
  [20, 0.03],
  [60, 0.01],
  [60, 0.03],
])('a circle of %f px radius on paper that has shrunk one way by a share of %f', (radius, shrunk) => {
  let cases: Case[]
  beforeAll(async () => {
    cases = []
    for (let i = 0; i < 6; i++) cases.push(await shrunkCircle(radius, shrunk, 8_100_000 + i))
  })

  it('tells how much longer its longest diameter is than its shortest, and which way it lies', () => {
    for (const { found } of cases) {
      const { by, sigma, longest } = told(found) ?? { by: 0, sigma: 0.01, longest: 0 }
      expect(Math.abs(by - 2 * radius * shrunk)).toBeLessThan(4 * sigma)
      expect(Math.abs(Math.sin(longest))).toBeGreaterThan(0.95)
    }
  })

  it('has its centre and mean radius to within their sigma', () => {
    for (const { found, centre } of cases) {
      const [xx, , , yy, , rr] = found.covariance
      // Of all radii of an ellipse with half axes a and b the mean is (a + b) / 2 to first order.
      const mean = radius * (1 - shrunk / 2)
      expect(Math.abs(found.centre[0] - centre[0])).toBeLessThan(4 * Math.sqrt(xx))
      expect(Math.abs(found.centre[1] - centre[1])).toBeLessThan(4 * Math.sqrt(yy))
      expect(Math.abs(found.radius - mean)).toBeLessThan(4 * Math.sqrt(rr))
    }
  })
})

describe('a circle on sound paper', () => {
  it.each([20, 60])('of %f px radius is told as round', async (radius) => {
    for (let i = 0; i < 12; i++) {
      const { found } = await shrunkCircle(radius, 0, 8_200_000 + i)
      expect(told(found)).toBeNull()
    }
  })
})

describe('marks on a straight line', () => {
  it('are no circle that could be out of round', () => {
    expect(outOfRound(Array.from({ length: 12 }, (_, k): Pixel => pixel(10 * k, 5 * k)))).toBeNull()
  })
})
