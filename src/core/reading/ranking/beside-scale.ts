import { expand } from '../../uncertainty/coverage.ts'
import { studentDensity } from '../../uncertainty/distributions.ts'
import { FIRST_ORDER } from '../../uncertainty/first-order.ts'
import { KNOWN } from '../../uncertainty/source.ts'
import { measured, type Uncertain } from '../../uncertainty/uncertain.ts'
import { weightedMean, weighting } from '../../uncertainty/weighted-mean.ts'

/** A value beside a figure, mm, radians or how many: what was scaled, found or worked out for the same dimension. */
export interface ValueBeside {
  readonly value: number
  /** Standard uncertainty, in the unit of the value. */
  readonly u: number
  /** Degrees of freedom of u; taken as known where it is absent. */
  readonly dof?: number
}

/** What all that stands beside a figure comes to. */
export interface Beside {
  readonly value: number
  readonly u: number
  readonly dof: number
}

/** How what is drawn may differ from the figure that stands at it. */
interface Drawn {
  readonly share: number
  /** How far off, in standard uncertainties of what stands beside; or as a share of the size. */
  readonly by: { readonly uncertainties: number } | { readonly ofSize: number }
}

/**
 * Most of what is drawn is as long as its figure says, within what is known of the drawing. Some is drawn with less care,
 * or read where its line is bad. And now and then a figure was altered and the drawing left as it was, and nobody wrote
 * N.T.S.: such a size is off by tens of per cent. Common practice, no source for the shares.
 */
const DRAWN: readonly Drawn[] = [
  { share: 0.955, by: { uncertainties: 1 } },
  { share: 0.03, by: { uncertainties: 4 } },
  { share: 0.015, by: { ofSize: 0.25 } },
]

/** No value is surer than this share of itself: of exact ones, only the rounding of the computer is left. */
const SUREST = 1e-6

/**
 * Brings all that stands beside a figure to its generalised least-squares mean, with what the pieces share; where they do
 * not agree, it is as much less sure. null where there is nothing.
 * @param drawn standard deviation by which what is drawn may differ from its figure, in the unit of the values, where
 *   their own uncertainties leave that out; all pieces share it
 */
export function besideFigure(pieces: readonly (Uncertain | ValueBeside)[], drawn = 0): Beside | null {
  const values = pieces.map(asUncertain).filter(({ value }) => Number.isFinite(value))
  if (values.length === 0) return null
  const mean = weightedMean(weighting(values), FIRST_ORDER, (i) => values[i] as Uncertain)
  const { u, dof } = expand(mean)
  const all = Math.hypot(u, drawn, SUREST * Math.abs(mean.value))
  // What is added is taken as known: degrees of freedom by Welch and Satterthwaite (JCGM 100:2008, eq. G.2b).
  return { value: mean.value, u: all, dof: u > 0 ? dof * (all / u) ** 4 : Number.POSITIVE_INFINITY }
}

const asUncertain = (piece: Uncertain | ValueBeside): Uncertain =>
  'sources' in piece
    ? piece
    : measured(
        piece.value,
        piece.u,
        'beside the figure',
        piece.dof === undefined ? KNOWN : { dof: piece.dof },
      )

/**
 * How likely it is that what stands beside a figure is what it is, were this the figure: a density over its value.
 * @param size what the figure says, in the unit of the value
 * @param toScale false where the figure says itself that it is not
 */
export function likelihoodBeside({ value, u, dof }: Beside, size: number, toScale = true): number {
  let sum = 0
  let shares = 0
  for (const { share, by } of DRAWN) {
    if (!toScale && 'uncertainties' in by) continue
    shares += share
    if ('uncertainties' in by) {
      const width = by.uncertainties * u
      sum += (share * studentDensity((value - size) / width, dof)) / width
    } else if (value > 0 && size > 0) {
      const t = Math.log(value / size) / by.ofSize
      sum += (share * studentDensity(t, Number.POSITIVE_INFINITY)) / (by.ofSize * value)
    }
  }
  return sum / shares
}
