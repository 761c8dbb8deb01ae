import { element } from '../linear-algebra/element.ts'
import type { ViewMapping } from '../mapping/view-mapping.ts'
import { measuredBy, type SolvedView } from '../measuring/measure-features.ts'
import { measureThrough } from '../measuring/propagate-measure.ts'
import { expand } from '../uncertainty/coverage.ts'
import { propagate, type Uncertain } from '../uncertainty/uncertain.ts'
import { isSuspect } from './data-snooping.ts'
import type { ReferencePart, StatedSize } from './reference.ts'
import { isLength } from './stretch.ts'

/** How one stated size fits the others. mm. */
export interface ReferenceCheck {
  id: string
  part?: ReferencePart
  stated: number
  /** What the calibration makes of it. */
  fitted: number
  /** What that is uncertain by, expanded at 95 %: its own picks, the draughtsman, the scale. */
  readonly U: number
  /** stated − fitted */
  residual: number
  /** Normalised residual among the references used, or for one set aside among all; 0 when nothing checks it. */
  w: number
  suspect: boolean
  /** Left out of the calibration, because it alone explains the misfit. */
  setAside: boolean
}

/**
 * Compares every stated length with what the calibration makes of it.
 * @param w normalised residuals, one for each size
 * @param setAside the reference that was left out
 */
export function referenceChecks(
  view: ViewMapping,
  sizes: readonly StatedSize[],
  w: readonly number[],
  theta: readonly Uncertain[],
  setAside: string | undefined,
): ReferenceCheck[] {
  const values = theta.map((t) => t.value)
  return sizes.flatMap((size, i): ReferenceCheck[] => {
    if (!isLength(size)) return []
    const stated = mean(size.equations.map((e) => e.stated.value))
    const fitted = mean(size.equations.map((e) => measureThrough(view, values, e.features, e.measure)))
    const wi = element(w, i)
    return [
      {
        id: size.reference,
        ...(size.part === undefined ? {} : { part: size.part }),
        stated,
        fitted,
        // Worked out only where it is asked: a view is calibrated far oftener than it is shown.
        get U() {
          return expandedBy({ view, theta }, size)
        },
        residual: stated - fitted,
        w: wi,
        suspect: isSuspect(wi),
        setAside: size.reference === setAside,
      },
    ]
  })
}

function expandedBy(solved: SolvedView, { equations }: StatedSize): number {
  const made = equations.map((e) => measuredBy(solved, e.measure, e.features))
  return expand(
    propagate(
      0,
      made,
      made.map(() => 1 / made.length),
    ),
  ).U
}

const mean = (values: readonly number[]): number => values.reduce((s, v) => s + v, 0) / values.length
