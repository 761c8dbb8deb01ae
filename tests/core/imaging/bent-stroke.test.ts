import { beforeAll, describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import { findPoint } from '../../../src/core/imaging/index.ts'
import { median } from '../../../src/core/uncertainty/median.ts'
import { many } from './judge/many.ts'
import { between } from './simulate/look.ts'
import { scanOf } from './simulate/scan-of.ts'
import { ring } from './simulate/shapes.ts'

interface Result {
  found: number
  /** Median of the errors' sizes, pixels, and how many are over 0.2 px. */
  usual: number
  coarse: number
  /** Rms error over stated uncertainty. */
  ratio: number
}

/** Points picked on the rim of circles of about these radii, up to 2 px beside it. */
async function pickedOnRims(radii: readonly [number, number], cases: number): Promise<Result> {
  const errors = await many(cases, 33, async (random) => {
    const radius = between(random, ...radii)
    const width = between(random, 2, Math.min(4, radius / 2))
    const look = { width, blur: between(random, 0.4, 0.9), contrast: 140, dark: true, ground: 220 }
    const size = Math.ceil(2 * radius + 100)
    const centre: Pixel = pixel(size / 2 + random.uniform(), size / 2 + random.uniform())
    const scan = await scanOf(
      { width: size, height: size, strokes: [ring(centre, radius, width)] },
      { ...look, slope: [0, 0], noise: 140 / 15, grain: 0, finish: 'grey' },
      random,
    )
    const a = between(random, -Math.PI, Math.PI)
    const r = radius + between(random, -2, 2)
    const found = findPoint(scan.window, pixel(centre[0] + r * Math.cos(a), centre[1] + r * Math.sin(a)))
    if (found.kind === 'none') return null
    const error = Math.hypot(found.pixel[0] - centre[0], found.pixel[1] - centre[1]) - radius
    return { error, inSigma: error / found.across }
  })
  const found = errors.filter((e) => e !== null)
  const rms = (values: readonly number[]) =>
    Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length)
  return {
    found: found.length,
    usual: median(found.map((e) => Math.abs(e.error))),
    coarse: found.filter((e) => Math.abs(e.error) > 0.2).length,
    ratio: rms(found.map((e) => e.inSigma)),
  }
}

describe.each([
  [7, 10],
  [10, 16],
  [16, 25],
  [25, 60],
  [60, 120],
])('a point on the rim of a circle of %f to %f px radius', (...radii) => {
  const cases = 50
  let result: Result
  beforeAll(async () => {
    result = await pickedOnRims(radii, cases)
  })
  it('lies on its centreline', () => {
    expect(result.usual).toBeLessThan(0.03)
    expect(result.coarse).toBeLessThanOrEqual(0.02 * cases)
  })
  it('tells its own uncertainty', () => {
    expect(result.ratio).toBeGreaterThan(0.7)
    expect(result.ratio).toBeLessThan(1.3)
  })
  it('is found', () => expect(result.found).toBeGreaterThanOrEqual(0.98 * cases))
})
