import { fitLine, type LineFit } from '../geometry/fit-line.ts'
import type { Pixel } from '../geometry/frames.ts'
import { bilevelEdgeVariance, isBilevel } from './bilevel.ts'
import { profilesOf } from './bring-home.ts'
import { centreSigma } from './centre-scatter.ts'
import type { GreyWindow } from './grey-window.ts'
import type { Settled } from './line-search.ts'
import { readingShift } from './reading.ts'
import type { Profile, SearchOptions } from './stroke.ts'

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
  grey: GreyWindow,
  { traced, inflation }: Settled,
  reading: NonNullable<SearchOptions['reading']>,
): LineThrough {
  const { shift, variance: common } = readingShift(reading, traced, inflation)
  const kept = profilesOf(traced, shift, 0).filter((p) => p.kept)
  const line = fitLine(kept.map((p) => p.centre))
  const [dx, dy] = line.direction
  const residuals = kept.map(
    ({ centre: [x, y] }) => (y - line.centroid[1]) * dx - (x - line.centroid[0]) * dy,
  )
  const own = centreSigma(traced, inflation, residuals, kept.length - 2)
  let sigma = Math.sqrt(own ** 2 + kept.length * common)
  if (isBilevel(grey)) {
    const edge = bilevelEdgeVariance(line.at[1] - line.at[0], [-dy, dx])
    sigma = Math.max(sigma, Math.sqrt(kept.length * edge * (reading === 'centre' ? 0.5 : 1)))
  }
  return { line, sigma, profiles: profilesOf(traced, shift, sigma), shift }
}
