import { element } from '../linear-algebra/element.ts'
import { isChecked, isSuspect, normalisedResiduals } from './data-snooping.ts'
import { CLEARLY_WORSE_BY, type Explanation } from './explanations.ts'
import type { StatedSize } from './reference.ts'
import type { Solution } from './solve-mapping.ts'
import { isLength } from './stretch.ts'

/** A reference that alone spoils a calibration. */
export interface Culprit {
  reference: string
  /** The solution without it. */
  rest: Solution
}

/** A rest that fits worse than this has more wrong with it than one reference. */
const REST_HOPELESS_BELOW = 0.001

/** References that fit the others so badly that they are suspect. */
export const suspectsOf = (sizes: readonly StatedSize[], w: readonly number[]): ReadonlySet<string> =>
  new Set(
    sizes.filter((size, i) => isLength(size) && isSuspect(element(w, i))).map(({ reference }) => reference),
  )

/**
 * The one suspect reference without which the others fit; null when there is none, or another explanation would do as
 * well.
 * @param sorted what may explain the misfit, likeliest first
 */
export function soleCulprit(all: Solution, sorted: readonly Explanation[]): Culprit | null {
  // With one redundant size every reference it involves explains the misfit as well as any other.
  if (all.dof + all.closings.length < 2) return null
  const [best] = sorted
  if (best?.leftOut.length !== 1 || (best.p ?? 1) < REST_HOPELESS_BELOW) return null
  const reference = element(best.leftOut, 0)
  // One that leaves it out as well says that it is wrong, too.
  const other = sorted.find(({ leftOut }) => !leftOut.includes(reference))
  const clear = other === undefined || other.cost - best.cost > CLEARLY_WORSE_BY
  return clear ? { reference, rest: best.rest } : null
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
