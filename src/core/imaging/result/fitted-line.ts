import { fitLine, type LineFit } from '../../geometry/fit-line.ts'
import type { Pixel } from '../../geometry/frames.ts'
import type { AcceptedStroke } from '../accept/acceptance.ts'
import { bilevelEdgeVariance } from '../noise/bilevel-edge.ts'
import { centreSigma } from '../noise/centre-sigma.ts'
import { pixelPhaseVariance } from '../noise/pixel-phase.ts'
import { isBilevel } from '../window/bilevel.ts'
import type { GreyPicture } from '../window/grey-picture.ts'
import { edgeShift } from './stroke-edge.ts'
import { profilesOf } from './stroke-result.ts'
import type { Profile, SearchOptions } from './stroke-types.ts'

export interface LineThrough {
  line: LineFit<Pixel>
  /** Of each kept centre across, pixels; see `StrokeLine`. */
  sigma: number
  profiles: Profile[]
  /** Of the reading from the centre, pixels. */
  shift: number
}

/** The total least-squares line through the kept centres of a straight stroke, with what each centre is worth. */
export function lineThrough(
  grey: GreyPicture,
  { traced, inflation }: AcceptedStroke,
  reading: NonNullable<SearchOptions['reading']>,
): LineThrough {
  const { shift, variance: common } = edgeShift(reading, traced, inflation)
  const kept = profilesOf(traced, shift, 0).filter((p) => p.kept)
  const line = fitLine(kept.map((p) => p.centre))
  const [dx, dy] = line.direction
  const residuals = kept.map(
    ({ centre: [x, y] }) => (y - line.centroid[1]) * dx - (x - line.centroid[0]) * dy,
  )
  const own = centreSigma(traced, inflation, residuals, kept.length - 2)
  const seen = line.at[1] - line.at[0]
  const phase = isBilevel(grey) ? 0 : pixelPhaseVariance(traced.fit.width, seen, [-dy, dx])
  let sigma = Math.sqrt(own ** 2 + kept.length * (common + phase))
  if (isBilevel(grey)) {
    const edge = bilevelEdgeVariance(seen, [-dy, dx])
    sigma = Math.max(sigma, Math.sqrt(kept.length * edge * (reading === 'centre' ? 0.5 : 1)))
  }
  return { line, sigma, profiles: profilesOf(traced, shift, sigma), shift }
}
