import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { PieceEquations } from '../fit/piece-equations.ts'
import { assemble } from '../fit/strip-equations.ts'
import { usualBlurMisfit } from '../fit/strip-fit.ts'
import type { Inflation } from '../noise/residual-correlation.ts'
import type { Traced } from '../trace/trace-stroke.ts'

const { f64 } = elements

/** The width of a stroke with what is known of it, pixels and pixels². */
export interface MarginalWidth {
  width: number
  variance: number
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
const WIDTH_STEPS = 6

/**
 * A narrow soft stroke hardly tells its width from its blur: a wider one that is blurred less looks the same. The widths
 * that go with all blurs that the pixels and what is usual allow then lie to one side of the best fit, and its curvature
 * there does not tell how far. So they are averaged over blur, each as likely as it fits; all widths are as likely
 * beforehand.
 * Source: Gelman et al., Bayesian Data Analysis (3rd ed. 2013), chapters 3 and 13: a parameter that is not asked for is
 * integrated out; given the blur, the width is taken as normal.
 */
export function marginalWidth(traced: Traced, inflation: Inflation): MarginalWidth {
  const { fit } = traced
  const m = Math.sqrt(fit.inverse.length)
  const noise = fit.variance * inflation.width
  const ofBlur = Math.sqrt(noise * f64(fit.inverse, m * m - 1))
  const own = noise * f64(fit.inverse, (m - 2) * m + m - 2) * fit.width ** 2
  const asFitted = { width: fit.width, variance: own }
  if (!(ofBlur > BLUR_KNOWN)) return asFitted
  const best = givenBlur(traced, fit.blur, fit.width, noise)
  if (best === null) return asFitted
  const step = Math.min(STEP * ofBlur, LONGEST_FIRST)
  const all = [...walk(traced, best, -step, noise).reverse(), best, ...walk(traced, best, step, noise)]
  const least = Math.min(...all.map((g) => g.misfit))
  let sum = 0
  let first = 0
  let second = 0
  all.forEach(({ at, width, variance, misfit }, i) => {
    const span = ((all[i + 1]?.at ?? at) - (all[i - 1]?.at ?? at)) / 2
    const weight = Math.exp((least - misfit) / 2) * Math.sqrt(variance) * span
    sum += weight
    first += weight * width
    second += weight * (width * width + variance)
  })
  if (!(sum > 0)) return asFitted
  const mean = first / sum
  return { width: mean, variance: second / sum - mean * mean }
}

interface GivenBlur extends MarginalWidth {
  /** ln blur. */
  at: number
  /** −2 ln of how likely it is. */
  misfit: number
}

/** From the best blur on, as far as it is likely. */
function walk(traced: Traced, best: GivenBlur, first: number, noise: number): GivenBlur[] {
  const out: GivenBlur[] = []
  let { at, width, misfit: least } = best
  let step = first
  for (let i = 1; i <= MOST_STEPS; i++) {
    at += step
    step *= LONGER
    const here = givenBlur(traced, Math.exp(at), width, noise)
    if (here === null || here.misfit > least + 2 * UNLIKELY) break
    least = Math.min(least, here.misfit)
    width = here.width
    out.push(here)
  }
  return out
}

/** The best width when the blur is so much; the centre does not depend on either. */
function givenBlur(
  { strip, fit, judged }: Traced,
  blur: number,
  start: number,
  noise: number,
): GivenBlur | null {
  const n = strip.curve.parameters
  const at = (n + 2) * n + n
  const equations = new PieceEquations()
  let width = start
  for (let step = 0; step < WIDTH_STEPS; step++) {
    const now = assemble(strip, { parameters: fit.parameters, width, blur }, judged.kept, equations)
    if (now === null) return null
    const own = f64(now.matrix, at)
    if (!(own > 1e-9)) return null
    const change = f64(now.side, n) / own
    if (Math.abs(change) < 2e-3) {
      if (Math.abs(now.contrast) > WHOLE_SCALE) return null
      const misfit = now.squares / noise + usualBlurMisfit(blur)
      return { at: Math.log(blur), width, variance: (noise / own) * width * width, misfit }
    }
    if (width < NARROWEST) return null
    width *= Math.exp(Math.max(-0.5, Math.min(0.5, change)))
  }
  return null
}
