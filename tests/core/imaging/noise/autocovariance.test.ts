import { beforeAll, describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { fitStrip, type StripFit } from '../../../../src/core/imaging/fit/strip-fit.ts'
import {
  type AutocovarianceSums,
  countRings,
  LAGS,
  NO_LAG,
  noSums,
  RINGS,
} from '../../../../src/core/imaging/noise/autocovariance.ts'
import { noiseInflation } from '../../../../src/core/imaging/noise/residual-correlation.ts'
import {
  BASIS,
  CENTRE,
  type ScoreContributions,
  scoreContributions,
  VALUES,
} from '../../../../src/core/imaging/noise/score-contributions.ts'
import { straightCurve } from '../../../../src/core/imaging/strip/reference-curve.ts'
import { type Strip, stripAlong } from '../../../../src/core/imaging/strip/strip.ts'
import { caseStream } from '../simulate/case-stream.ts'
import { type Look, PLAIN_LOOK } from '../simulate/look.ts'
import { noisy } from '../simulate/scan.ts'
import { cleanPicture } from '../simulate/scan-of.ts'
import { bar } from '../simulate/shapes.ts'

const LOOK: Look = { ...PLAIN_LOOK, noise: 8 }
const SIDE = 2 * LAGS + 1
const KEPT = new Array<boolean>(8).fill(true)

/** A stroke through a picture with noise of this grain, and its fit. */
function fitted(grain: number, seed: number): { strip: Strip; fit: StripFit } {
  const clean = cleanPicture({ width: 80, height: 80, strokes: [bar(pixel(40, 40), 0.3, LOOK.width)] }, LOOK)
  const { width, height, data } = noisy(clean, LOOK.noise, caseStream(seed), grain)
  const window = { left: 0, top: 0, width, height, data: Float32Array.from(data) }
  const end = (s: number) => pixel(40 + s * Math.cos(0.3), 40 + s * Math.sin(0.3))
  const strip = stripAlong(window, straightCurve(end(-16), end(16)), KEPT.length, -9, 9)
  const fit = fitStrip(strip, { parameters: [0, 0], width: 5, blur: 0.7 }, KEPT)
  if (fit === null) throw new Error('The stroke was not fitted.')
  return { strip, fit }
}

describe('sums over pairs of pixels', () => {
  let pulls: ScoreContributions
  let sums: AutocovarianceSums

  beforeAll(() => {
    const { strip, fit } = fitted(1, 5)
    const found = scoreContributions(strip, fit, KEPT, LAGS)
    if (found === null) throw new Error('There were too few pixels.')
    pulls = found
    sums = noSums()
    countRings(pulls, sums, LAGS + 1)
  })

  it('are at each lag what their definition says', () => {
    const at = (i: number) => [
      (pulls.place[i] ?? 0) % pulls.stride,
      Math.floor((pulls.place[i] ?? 0) / pulls.stride),
    ]
    for (const [right, down] of [
      [0, 0],
      [1, 0],
      [-3, 2],
      [8, 8],
    ] as const) {
      let [count, residual, centre] = [0, 0, 0]
      for (let i = 0; i < pulls.n; i++) {
        for (let j = 0; j < pulls.n; j++) {
          const [x = 0, y = 0] = at(i)
          const [u = 0, v = 0] = at(j)
          if (u - x !== right || v - y !== down) continue
          const value = (pixel: number, k: number) => pulls.values[pixel * VALUES + k] ?? Number.NaN
          count++
          residual += value(i, 0) * value(j, 0)
          centre += value(i, 1 + CENTRE) * value(j, 1 + CENTRE)
        }
      }
      const lag = down * SIDE + right + LAGS
      expect(sums.count[lag]).toBe(count)
      expect(sums.residual[lag]).toBeCloseTo(residual, 6)
      expect(sums.centre[lag]).toBeCloseTo(centre, 10)
    }
  })

  it('count each pair of pixels once: every lag to 8 px lies in one ring', () => {
    const all = RINGS.flat()
    expect(new Set(all).size).toBe(all.length)
    // Half of the lags about none, and none itself.
    expect(all.length).toBe((SIDE * SIDE - 1) / 2 + 1)
  })

  it('are of directions that are orthonormal, and of residuals that have none of them', () => {
    for (let a = 1; a <= BASIS; a++) {
      for (let b = 0; b <= a; b++) {
        let sum = 0
        for (let i = 0; i < pulls.n; i++)
          sum += (pulls.values[i * VALUES + a] ?? 0) * (pulls.values[i * VALUES + b] ?? 0)
        expect(sum).toBeCloseTo(a === b ? 1 : 0, 6)
      }
    }
  })

  it('hold the whole of each direction at no lag', () => {
    for (const p of sums.projection) expect(p[NO_LAG]).toBeCloseTo(1, 9)
  })
})

describe('by how much noise that goes together makes a centre more uncertain', () => {
  /** Mean over pictures of the variance that is told, and of what it is, over that of one pixel's noise. */
  const overOnePixel = (grain: number): { told: number; known: number } => {
    let [told, known] = [0, 0]
    const pictures = 40
    for (let i = 0; i < pictures; i++) {
      const { strip, fit } = fitted(grain, 100 + i)
      told += (fit.variance * noiseInflation(strip, fit, KEPT).centre) / LOOK.noise ** 2 / pictures
      known += knownOf(strip, fit, grain) / pictures
    }
    return { told, known }
  }

  /** White noise blurred by g pixels goes together by exp(−d²/4g²) at a distance d. */
  const knownOf = (strip: Strip, fit: StripFit, grain: number): number => {
    const pulls = scoreContributions(strip, fit, KEPT, LAGS)
    if (pulls === null) throw new Error('There were too few pixels.')
    const sums = noSums()
    countRings(pulls, sums, LAGS + 1)
    return RINGS.flat().reduce((sum, lag) => {
      const [x, y] = [(lag % SIDE) - LAGS, Math.floor(lag / SIDE)]
      const together =
        lag === NO_LAG ? 1 : grain > 0 ? 2 * Math.exp(-(x * x + y * y) / (4 * grain * grain)) : 0
      return sum + (sums.centre[lag] ?? 0) * together
    }, 0)
  }

  it('is nothing in white noise', () => {
    const { told, known } = overOnePixel(0)
    expect(known).toBeCloseTo(1, 9)
    expect(told).toBeGreaterThan(0.9)
    expect(told).toBeLessThan(1.1)
  })

  it('is in a grained picture near to what its known correlation makes it', () => {
    const { told, known } = overOnePixel(0.8)
    expect(known).toBeGreaterThan(2)
    expect(told / known).toBeGreaterThan(0.75)
    expect(told / known).toBeLessThan(1.25)
  })
})
