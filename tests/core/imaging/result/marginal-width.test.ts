import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { pieceCentres } from '../../../../src/core/imaging/fit/piece-centres.ts'
import { assemble } from '../../../../src/core/imaging/fit/strip-equations.ts'
import { fitStrip, usualBlurMisfit } from '../../../../src/core/imaging/fit/strip-fit.ts'
import { marginalWidth } from '../../../../src/core/imaging/result/marginal-width.ts'
import { straightCurve } from '../../../../src/core/imaging/strip/reference-curve.ts'
import { stripAlong } from '../../../../src/core/imaging/strip/strip.ts'
import type { Traced } from '../../../../src/core/imaging/trace/trace-stroke.ts'
import { caseStream } from '../simulate/case-stream.ts'
import { cleanPicture } from '../simulate/scan-of.ts'
import { bar } from '../simulate/shapes.ts'

const DIRECTION = 0.3

/** A band in white noise, traced along its own course. */
function traced(width: number, blur: number, noise: number, seed: number): Traced {
  const look = {
    width,
    blur,
    noise,
    contrast: 80,
    dark: true,
    ground: 200,
    slope: [0, 0] as [number, number],
    grain: 0,
    finish: 'grey' as const,
  }
  const clean = cleanPicture({ width: 48, height: 48, strokes: [bar(pixel(24, 24), DIRECTION, width)] }, look)
  const random = caseStream(seed)
  const data = Float32Array.from(clean.data, (v) => v + noise * random.normal())
  const end = (s: number) => pixel(24 + s * Math.cos(DIRECTION), 24 + s * Math.sin(DIRECTION))
  const grey = { left: 0, top: 0, width: 48, height: 48, data }
  const strip = stripAlong(grey, straightCurve(end(-16), end(16)), 4, -7, 7)
  const kept = strip.pieces.map(() => true)
  const fit = fitStrip(strip, { parameters: [0, 0], width, blur }, kept)
  if (fit === null) throw new Error('The band was not fitted.')
  const judged = { kept, because: kept.map(() => undefined), byNoise: false }
  return { strip, fit, centres: pieceCentres(strip, fit), judged }
}

const white = (width = 1) => ({ centre: 1, width, even: 1 })

describe('the width of a band whose blur the pixels tell', () => {
  const wide = traced(6, 0.7, 0.3, 3)

  it('is the fit’s own, and its variance that of the fit', () => {
    const { width, variance } = marginalWidth(wide, white())
    expect(width).toBe(wide.fit.width)
    expect(Math.abs(width - 6)).toBeLessThan(4 * Math.sqrt(variance))
    // Of ends, ln width and ln blur the third.
    const ofLog = wide.fit.variance * (wide.fit.inverse[2 * 4 + 2] ?? Number.NaN)
    expect(variance).toBeCloseTo(ofLog * width ** 2, 12)
  })

  it('is the more uncertain the more its noise goes together', () => {
    const { width, variance } = marginalWidth(wide, white(2))
    expect(width).toBe(wide.fit.width)
    expect(variance / marginalWidth(wide, white()).variance).toBeCloseTo(2, 9)
  })
})

describe('the width of a narrow soft band', () => {
  /** Mean and variance over all widths and blurs, each as likely as it fits: sums over a fine grid of both. */
  function summed({ strip, fit, judged }: Traced, inflation: number) {
    const noise = fit.variance * inflation
    let [sum, first, second, least] = [0, 0, 0, Number.POSITIVE_INFINITY]
    const all: { width: number; misfit: number }[] = []
    for (let at = -0.35; at < 0.35; at += 0.025) {
      const blur = fit.blur * Math.exp(at)
      for (let width = fit.width - 1; width < fit.width + 0.6; width += 0.045) {
        const now = assemble(strip, { parameters: fit.parameters, width, blur }, judged.kept)
        if (now === null || Math.abs(now.contrast) > 255) continue
        const misfit = now.squares / noise + usualBlurMisfit(blur)
        least = Math.min(least, misfit)
        all.push({ width, misfit })
      }
    }
    for (const { width, misfit } of all) {
      const weight = Math.exp((least - misfit) / 2)
      sum += weight
      first += weight * width
      second += weight * width * width
    }
    return { width: first / sum, sigma: Math.sqrt(second / sum - (first / sum) ** 2) }
  }

  it.each([
    [3.5, 1, 3, 5, 1],
    [3.5, 1, 3, 6, 2],
  ])(
    'of %s px, blur %s, noise %s, seed %s, inflated by %s, is the mean over all blurs that fit',
    (w, b, n, seed, inflation) => {
      const narrow = traced(w, b, n, seed)
      const { width, variance } = marginalWidth(narrow, white(inflation))
      const all = summed(narrow, inflation)
      expect(Math.abs(width - all.width)).toBeLessThan(0.03 * all.sigma)
      expect(Math.sqrt(variance) / all.sigma).toBeGreaterThan(0.92)
      expect(Math.sqrt(variance) / all.sigma).toBeLessThan(1.08)
      expect(Math.abs(width - w)).toBeLessThan(3 * Math.sqrt(variance))
    },
  )

  it('is more uncertain than the fit’s curvature at the best blur tells', () => {
    const narrow = traced(2.5, 1, 4, 3)
    const { fit } = narrow
    // With the blur known: the inverse of the normal matrix without its row and column.
    const [ww, wb, bb] = [fit.inverse[10] ?? 0, fit.inverse[11] ?? 0, fit.inverse[15] ?? 1]
    const known = fit.variance * (ww - wb ** 2 / bb) * fit.width ** 2
    expect(marginalWidth(narrow, white()).variance).toBeGreaterThan(1.5 * known)
  })
})
