import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { edgeResponse, type ResponseOfEdge } from '../fit/edge-response.ts'
import { PieceEquations } from '../fit/piece-equations.ts'
import { assemble } from '../fit/strip-equations.ts'
import { usualBlurMisfit } from '../fit/strip-fit.ts'
import type { Inflation } from '../noise/residual-correlation.ts'
import type { Traced } from '../trace/trace-stroke.ts'

const { f64 } = elements

/** The width of a stroke with what is known of it, pixels and pixels², and its blur with that, pixels. */
export interface MarginalWidth {
  width: number
  variance: number
  blur: number
}

/** Where ln blur is known better than this the fit's own figures stand: the width hardly depends on it. */
const BLUR_KNOWN = 0.02
/** The first step of ln blur, in its own standard deviation and at most; each further one is longer by this factor. */
const STEP = 0.5
const LONGEST_FIRST = 0.2
const LONGER = 1.2
const MOST_STEPS = 14
/** Blurs less likely than the likeliest by this many natural logarithms are left out. */
const UNLIKELY = 6
/** No ink differs from its ground by more, grey values. */
const WHOLE_SCALE = 255
const NARROWEST = 0.3
/** The cross profile of no lens is known better than to this share of the contrast. */
const UNLIKE = 0.005
const WIDTH_STEPS = 6

/**
 * A narrow soft stroke hardly tells its width from its blur: a wider one that is blurred less looks the same. The widths
 * that go with all blurs that the pixels and what is usual allow then lie to one side of the best fit, and its curvature
 * there does not tell how far. So they are averaged over blur, each as likely as it fits; all widths are as likely
 * beforehand.
 * Source: Gelman et al., Bayesian Data Analysis (3rd ed. 2013), chapters 3 and 13: a parameter that is not asked for is
 * integrated out; given the blur, the width is taken as normal.
 * @param likely `likelyGaussians`, where they are known already
 */
export function marginalWidth(
  traced: Traced,
  inflation: Inflation,
  likely?: readonly GivenBlur[],
): MarginalWidth {
  const { fit } = traced
  const m = Math.sqrt(fit.inverse.length)
  const noise = fit.variance * inflation.width
  const ofBlur = Math.sqrt(noise * f64(fit.inverse, m * m - 1))
  const asTold = noise * f64(fit.inverse, (m - 2) * m + m - 2) * fit.width ** 2
  const asFitted = { width: fit.width, variance: asTold, blur: fit.blur }
  if (!(ofBlur > BLUR_KNOWN)) return asFitted
  const own = momentsOf(likely ?? likelyGaussians(traced, noise), ({ misfit }) => misfit)
  return own === null ? asFitted : { width: own.width, variance: own.variance, blur: fit.blur }
}

/** All Gaussian blurs that are likely, in order; none when the best does not settle. @param noise variance of a pixel */
export function likelyGaussians(traced: Traced, noise: number): GivenBlur[] {
  const blurred = { traced, noise, response: edgeResponse }
  const best = givenBlur(blurred, traced.fit.blur, traced.fit.width)
  return best === null ? [] : about(blurred, best)
}

/** The first step of ln blur, in which likely blurs are walked through. */
function stepOf({ traced: { fit }, noise }: Blurred): number {
  return Math.min(STEP * Math.sqrt(noise * f64(fit.inverse, fit.inverse.length - 1)), LONGEST_FIRST)
}

/** Mean width and variance over some blurs, and how likely they are together. @param misfit −2 ln of how likely each is */
export function momentsOf(
  all: readonly GivenBlur[],
  misfit: (given: GivenBlur) => number,
): (MarginalWidth & { weight: number }) | null {
  const least = Math.min(...all.map(misfit))
  let sum = 0
  let first = 0
  let second = 0
  let blurs = 0
  all.forEach((given, i) => {
    const { at, width, variance } = given
    const span = ((all[i + 1]?.at ?? at) - (all[i - 1]?.at ?? at)) / 2
    const weight = Math.exp((least - misfit(given)) / 2) * Math.sqrt(variance) * span
    sum += weight
    first += weight * width
    second += weight * (width * width + variance)
    blurs += weight * Math.exp(at)
  })
  if (!(sum > 0)) return null
  const mean = first / sum
  return {
    width: mean,
    variance: second / sum - mean * mean,
    blur: blurs / sum,
    weight: sum * Math.exp(-least / 2),
  }
}

/** A stroke that is fitted with edges of one kind, and the variance of its noise. */
export interface Blurred {
  traced: Traced
  noise: number
  response: ResponseOfEdge
}

/** All blurs that are likely about the best, in order. */
export function about(blurred: Blurred, best: GivenBlur): GivenBlur[] {
  const step = stepOf(blurred)
  return [...walk(blurred, best, -step).reverse(), best, ...walk(blurred, best, step)]
}

/**
 * What the likeliest shape leaves because no lens is quite like it: alike all along, so that a longer stroke tells no better
 * which it is. As a variance of each pixel.
 */
function unlike({ strip, fit, judged }: Traced): number {
  const length = strip.pieces.reduce((sum, p, k) => sum + (judged.kept[k] ? p.to - p.from : 0), 0)
  return length * (UNLIKE * fit.contrast) ** 2
}

export interface GivenBlur extends MarginalWidth {
  /** ln blur. */
  at: number
  /** −2 ln of how likely it is; and when no lens is quite like it. */
  misfit: number
  tempered: number
}

/** From the best blur on, as far as it is likely. */
function walk(blurred: Blurred, best: GivenBlur, first: number): GivenBlur[] {
  const out: GivenBlur[] = []
  let { at, width, misfit: least } = best
  let step = first
  for (let i = 1; i <= MOST_STEPS; i++) {
    at += step
    step *= LONGER
    const here = givenBlur(blurred, Math.exp(at), width)
    if (here === null || here.misfit > least + 2 * UNLIKELY) break
    least = Math.min(least, here.misfit)
    width = here.width
    out.push(here)
  }
  return out
}

/** The best width when the blur is so much; the centre does not depend on either. */
export function givenBlur(
  { traced, noise, response }: Blurred,
  blur: number,
  start: number,
): GivenBlur | null {
  const { strip, fit, judged } = traced
  const n = strip.curve.parameters
  const at = (n + 2) * n + n
  const equations = new PieceEquations()
  let width = start
  for (let step = 0; step < WIDTH_STEPS; step++) {
    const now = assemble(strip, { parameters: fit.parameters, width, blur }, judged.kept, equations, response)
    if (now === null) return null
    const own = f64(now.matrix, at)
    if (!(own > 1e-9)) return null
    const change = f64(now.side, n) / own
    if (Math.abs(change) < 2e-3) {
      if (Math.abs(now.contrast) > WHOLE_SCALE) return null
      const misfit = now.squares / noise + usualBlurMisfit(blur)
      const tempered = now.squares / (noise + unlike(traced)) + usualBlurMisfit(blur)
      return { at: Math.log(blur), width, variance: (noise / own) * width * width, misfit, tempered, blur }
    }
    if (width < NARROWEST) return null
    width *= Math.exp(Math.max(-0.5, Math.min(0.5, change)))
  }
  return null
}
