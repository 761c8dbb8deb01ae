import { element } from '../linear-algebra/element.ts'
import type { ViewMapping } from '../mapping/view-mapping.ts'
import { CalibrationError } from './calibration-error.ts'
import { isChecked, isSuspect, normalisedResiduals } from './data-snooping.ts'
import { probability, withClosings } from './goodness-of-fit.ts'
import type { StatedSize } from './reference.ts'
import { type Solution, solveMapping } from './solve-mapping.ts'
import { isLength } from './stretch.ts'

/** A reference that alone spoils a calibration. */
export interface Culprit {
  reference: string
  /** The solution without it. */
  rest: Solution
}

/** A rest that fits worse than this has more wrong with it than one reference. */
const REST_HOPELESS_BELOW = 0.001

/** Chi-square by which the second-best explanation must be worse: 1 % with one degree of freedom. */
const CLEARLY_WORSE_BY = 6.63

/** The one suspect reference without which the others fit; null when there is none, or another would do as well. */
export function soleCulprit(
  view: ViewMapping,
  sizes: readonly StatedSize[],
  w: readonly number[],
  all: Solution,
  errors?: Solution['errors'],
): Culprit | null {
  // With one redundant size every reference it involves explains the misfit as well as any other.
  if (all.dof + all.closings.length < 2) return null
  const suspects = new Set(
    sizes.filter((size, i) => isLength(size) && isSuspect(element(w, i))).map((s) => s.reference),
  )
  const [best, second] = [...suspects]
    .flatMap((reference) => {
      const rest = withoutReference(view, sizes, reference, errors)
      return rest === null ? [] : [{ reference, rest, fit: withClosings(retained(sizes, reference), rest) }]
    })
    .sort((a, b) => a.fit.chi2 - b.fit.chi2)
  if (best === undefined || (probability(best.fit) ?? 1) < REST_HOPELESS_BELOW) return null
  const clear = second === undefined || second.fit.chi2 - best.fit.chi2 > CLEARLY_WORSE_BY
  return clear ? { reference: best.reference, rest: best.rest } : null
}

/** w of the reference set aside as all references test it, of the others as they test one another. */
export function testedBy(
  sizes: readonly StatedSize[],
  w: readonly number[],
  used: readonly StatedSize[],
  solution: Solution,
  culprit: Culprit | null,
): readonly number[] {
  if (culprit === null) return w
  const among = isChecked(solution) ? normalisedResiduals(used, solution) : used.map(() => 0)
  return sizes.map((size, i) =>
    size.reference === culprit.reference ? element(w, i) : element(among, used.indexOf(size)),
  )
}

function withoutReference(
  view: ViewMapping,
  sizes: readonly StatedSize[],
  reference: string,
  errors: Solution['errors'] | undefined,
): Solution | null {
  try {
    return solveMapping(view, retained(sizes, reference), undefined, errors === undefined ? {} : { errors })
  } catch (error) {
    if (error instanceof CalibrationError) return null
    throw error
  }
}

/** The stated sizes without those of a reference. */
export const retained = (sizes: readonly StatedSize[], culprit: string | undefined): readonly StatedSize[] =>
  culprit === undefined ? sizes : sizes.filter(({ reference }) => reference !== culprit)
