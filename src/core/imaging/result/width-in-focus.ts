import { discResponse } from '../fit/disc-response.ts'
import type { Inflation } from '../noise/residual-correlation.ts'
import type { Traced } from '../trace/trace-stroke.ts'
import {
  about,
  type Blurred,
  type GivenBlur,
  givenBlur,
  likelyGaussians,
  type MarginalWidth,
  marginalWidth,
  momentsOf,
} from './marginal-width.ts'

/** Of strokes wider than this, pixels, the edges stand apart, and their place does not hang on what blurred them. */
const APART = 6
/** Standard deviations of discs that are tried, pixels, each larger by a factor; the best are then settled by halving. */
const LARGER = 1.13
const DISCS = Array.from({ length: 14 }, (_, i) => 0.35 * LARGER ** i)
const HALVINGS = 3
/** Of more pieces than this only some are looked at. */
const MOST_PIECES = 10
/** Discs fit as well as a Gaussian that is wider than they are by no more than this, as a share. */
const SHARPEST = 0.65
/** A Gaussian's blur is given up where it is less likely than this. */
const UNLIKELY_SHARE = 0.05

/**
 * The width with what is known of it when the scan may be out of focus: its blur is a disc then, and no Gaussian, and with its
 * flat top a narrow stroke looks like a wide one. Of strokes narrow enough for that both are as likely beforehand. Where
 * discs are not clearly likelier the width stays as a Gaussian's blur tells it: that they may be right is in its variance.
 * Source: as of `marginalWidth`; averaged over kinds of blur too.
 */
export function widthInFocusOrNot(traced: Traced, inflation: Inflation): MarginalWidth {
  const { fit } = traced
  if (fit.width > APART) return marginalWidth(traced, inflation)
  const noise = fit.variance * inflation.width
  const part = partOf(traced)
  const gaussian = likelyGaussians(part, noise)
  const asGaussian = marginalWidth(traced, inflation, part === traced ? gaussian : undefined)
  const outOfFocus = { traced: part, noise, response: discResponse }
  const families = likelyDiscs(outOfFocus).map((disc) => about(outOfFocus, disc))
  if (gaussian.length === 0 || families.length === 0) return asGaussian
  const least = Math.min(...[gaussian, ...families].flat().map(({ tempered }) => tempered))
  const tempered = ({ tempered: misfit }: GivenBlur): number => misfit - least
  const discs = families.flatMap((all) => momentsOf(all, tempered) ?? [])
  const weight = momentsOf(gaussian, tempered)?.weight ?? 0
  const all = discs.reduce((sum, disc) => sum + disc.weight, weight)
  if (!(all > 0)) return asGaussian
  const mean = (of: (known: MarginalWidth) => number): number =>
    discs.reduce((sum, disc) => sum + (disc.weight / all) * of(disc), (weight / all) * of(asGaussian))
  const isGaussian = weight > UNLIKELY_SHARE * all
  const width = isGaussian ? asGaussian.width : mean((known) => known.width)
  const blur = isGaussian ? asGaussian.blur : mean((known) => known.blur)
  return { width, blur, variance: mean((known) => known.variance + (known.width - width) ** 2) }
}

/** Of a long stroke some pieces, evenly: as no lens is quite like either, more of it tells no better. */
function partOf(traced: Traced): Traced {
  const { judged } = traced
  const step = Math.ceil(judged.kept.filter(Boolean).length / MOST_PIECES)
  if (step < 2) return traced
  let n = 0
  return { ...traced, judged: { ...judged, kept: judged.kept.map((kept) => kept && n++ % step === 0) } }
}

/** The discs that fit better than those hardly larger or smaller: a small one of a wide stroke, a large one of a narrow. */
function likelyDiscs(blurred: Blurred): GivenBlur[] {
  const { fit } = blurred.traced
  let { width } = fit
  // All of what is seen cannot be narrower than what blurs it, and hardly any of it is sharper than a Gaussian would be.
  const [least, most] = [SHARPEST * fit.blur, LARGER * Math.sqrt(fit.blur ** 2 + width ** 2 / 12)]
  const tried = DISCS.filter((blur) => blur > least && blur < most).map((blur) => {
    const here = givenBlur(blurred, blur, width)
    if (here !== null) width = here.width
    return here
  })
  const misfitAt = (i: number): number => tried[i]?.misfit ?? Number.POSITIVE_INFINITY
  return tried.flatMap((disc, i) => {
    const isLeast = disc !== null && disc.misfit <= misfitAt(i - 1) && disc.misfit < misfitAt(i + 1)
    return isLeast ? [settled(blurred, disc)] : []
  })
}

/** The best disc near one. */
function settled(blurred: Blurred, disc: GivenBlur): GivenBlur {
  let best = disc
  let step = Math.log(LARGER)
  for (let i = 0; i < HALVINGS; i++) {
    step /= 2
    for (const at of [best.at - step, best.at + step]) {
      const here = givenBlur(blurred, Math.exp(at), best.width)
      if (here !== null && here.misfit < best.misfit) best = here
    }
  }
  return best
}
