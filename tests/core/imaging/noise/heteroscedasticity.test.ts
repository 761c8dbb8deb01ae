import { describe, expect, it } from 'vitest'
import { heteroscedasticity } from '../../../../src/core/imaging/noise/heteroscedasticity.ts'
import {
  BASIS,
  CENTRE,
  type ScoreContributions,
  VALUES,
  WIDTH,
} from '../../../../src/core/imaging/noise/score-contributions.ts'

interface PixelOf {
  residual: number
  /** Its share of each direction; 0 where none is said. */
  shares: Readonly<Record<number, number>>
}

function contributions(pixels: readonly PixelOf[]): ScoreContributions {
  const values = new Float64Array(pixels.length * VALUES)
  pixels.forEach(({ residual, shares }, i) => {
    values[i * VALUES] = residual
    for (let m = 0; m < BASIS; m++) values[i * VALUES + 1 + m] = shares[m] ?? 0
  })
  const none = new Int32Array(0)
  return { n: pixels.length, values, group: none, index: none, stride: 0, place: none }
}

const NOTHING_TAKEN = new Float64Array(BASIS)
const [PIECES, PIXELS] = [8, 10] as const

/** Pieces whose noise is 3 grey values in one half of them and 6 in the other, and their pulls in each half. */
function uneven(weak: Record<number, number>, strong: Record<number, number>): ScoreContributions {
  return contributions(
    Array.from({ length: PIECES * PIXELS }, (_, i) => {
      const isStrong = Math.floor(i / PIXELS) >= PIECES / 2
      return { residual: (i % 2 ? 1 : -1) * (isStrong ? 6 : 3), shares: isStrong ? strong : weak }
    }),
  )
}
const LEVEL = (3 ** 2 + 6 ** 2) / 2

describe('by how much noise is stronger where pixels pull', () => {
  it('is not at all where they pull alike', () => {
    const alike = uneven({ [CENTRE]: 0.1 }, { [CENTRE]: -0.1 })
    expect(heteroscedasticity(alike, CENTRE, LEVEL, NOTHING_TAKEN)).toBeCloseTo(1, 12)
  })

  it('is the variance of the pieces that alone pull, over that of all', () => {
    const apart = uneven({ [WIDTH]: 0.1 }, { [CENTRE]: 0.1 })
    expect(heteroscedasticity(apart, CENTRE, LEVEL, NOTHING_TAKEN)).toBeCloseTo(36 / LEVEL, 12)
    expect(heteroscedasticity(apart, WIDTH, LEVEL, NOTHING_TAKEN)).toBeCloseTo(9 / LEVEL, 12)
  })

  it('is their mean by the square of the pull where both do', () => {
    const both = uneven({ [CENTRE]: 0.1 }, { [CENTRE]: 0.2 })
    expect(heteroscedasticity(both, CENTRE, LEVEL, NOTHING_TAKEN)).toBeCloseTo((4 * 36 + 9) / 5 / LEVEL, 12)
  })

  it('is told of one where nothing pulls', () => {
    expect(heteroscedasticity(uneven({}, {}), CENTRE, LEVEL, NOTHING_TAKEN)).toBe(1)
  })
})

describe('what the fit takes off the residuals', () => {
  const N = 20
  /** Orthonormal: cosines of 0 to 7 half turns over all pixels. */
  const cosine = (m: number, i: number) =>
    Math.sqrt((m === 0 ? 1 : 2) / N) * Math.cos((Math.PI * m * (i + 0.5)) / N)
  const shares = (i: number) => Array.from({ length: BASIS }, (_, m) => cosine(m, i))

  it('is not taken for unevenness: even noise remains even', () => {
    // What is left of white noise of variance v has v·(1 − Σ shares²) at each pixel.
    const left = Array.from({ length: N }, (_, i) => ({
      residual: Math.sqrt(16 * (1 - shares(i).reduce((sum, h) => sum + h * h, 0))),
      shares: shares(i),
    }))
    const taken = new Float64Array(BASIS).fill(16)
    for (let pull = 0; pull < BASIS; pull++)
      expect(heteroscedasticity(contributions(left), pull, 16, taken)).toBeCloseTo(1, 12)
  })

  it('is for each direction as large as the noise is in it', () => {
    const [many, few] = [40, 4] as const
    const left = Array.from({ length: N }, (_, i) => ({
      residual: Math.sqrt(
        16 - shares(i).reduce((sum, h, m) => sum + (m === 2 ? many : m === 5 ? few : 0) * h * h, 0),
      ),
      shares: shares(i),
    }))
    const taken = Float64Array.from({ length: BASIS }, (_, m) => (m === 2 ? many : m === 5 ? few : 0))
    expect(heteroscedasticity(contributions(left), CENTRE, 16, taken)).toBeCloseTo(1, 12)
    expect(heteroscedasticity(contributions(left), CENTRE, 16, NOTHING_TAKEN)).toBeLessThan(0.95)
  })
})
