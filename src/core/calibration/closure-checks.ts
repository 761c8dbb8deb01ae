import { element } from '../linear-algebra/element.ts'
import { areASum, isFactor, type Member, membersOf, statedOf } from './closing-members.ts'
import { closes, closureFit } from './closure-fit.ts'
import type { ReferencePart, StatedSize } from './reference.ts'
import type { Solution } from './solve-mapping.ts'

/** A stated size that stands in a closing. mm. */
export interface ClosingSize {
  id: string
  part?: ReferencePart
  stated: number
}

/** Whether stated sizes that close on themselves add up, whatever the picks. mm. */
export interface ClosureCheck {
  /** `same`: one length stated twice; `sum`: lengths that add up; `shape`: lengths that give another by their shape. */
  kind: 'same' | 'sum' | 'shape'
  /** Those that give the others, in the order of the references. */
  by: readonly ClosingSize[]
  /** Those that are given: of a sum the side with the fewer, where both have as many that of the last of the closing. */
  given: readonly ClosingSize[]
  /** What the first come to: their sum, or what their shape makes of the last. */
  expected: number
  /** What is stated for it. */
  stated: number
  /** stated − expected */
  misclosure: number
  /** What the rounding of the figures lets it miss by, standard; what their graduations are not known to add is not in it. */
  u: number
  closes: boolean
}

/** What each closing of a solution comes to. */
export function closureChecks(
  sizes: readonly StatedSize[],
  { closings, residuals }: Pick<Solution, 'closings' | 'residuals'>,
): ClosureCheck[] {
  const fit = closureFit(sizes, closings, residuals)
  return closings.flatMap((closing, k): ClosureCheck[] => {
    const members = membersOf(sizes, closing)
    const last = givenBy(members)
    // Two sides of one rectangle between the same marks have one figure, and nothing can come of it.
    if (last === null) return []
    const plain = areASum(members)
    const given = plain ? smallerSide(members) : [last]
    const by = members.filter((member) => !given.includes(member))
    const stated = sumOf(given)
    const misclosure = plain ? stated - sumOf(by) : element(fit.misclosures, k) / last.factor
    const check: ClosureCheck = {
      kind: plain ? (members.length === 2 ? 'same' : 'sum') : 'shape',
      by: by.map(closingSize),
      given: given.map(closingSize),
      expected: stated - misclosure,
      stated,
      misclosure,
      u: element(fit.us, k) / Math.abs(last.factor),
      closes: closes(fit, k),
    }
    return [check]
  })
}

/** The size that follows from others: the last, or that which counts most where the last stands in it both ways. */
function givenBy(members: readonly Member[]): Member | null {
  if (members.length < 2) return null
  const last = members.find((member) => member.last && isFactor(member))
  const most = members.reduce((a, b) => (Math.abs(b.factor) > Math.abs(a.factor) ? b : a))
  return last ?? (isFactor(most) ? most : null)
}

/** Of a sum the side with the fewer, which the others add up to. */
function smallerSide(members: readonly Member[]): readonly Member[] {
  const added = members.filter(({ factor }) => factor > 0)
  const taken = members.filter(({ factor }) => factor <= 0)
  return taken.length > 0 && taken.length < added.length ? taken : added
}

const sumOf = (members: readonly Member[]): number =>
  members.reduce((sum, { size }) => sum + statedOf(size), 0)

const closingSize = ({ size }: Member): ClosingSize => ({
  id: size.reference,
  ...(size.part === undefined ? {} : { part: size.part }),
  stated: statedOf(size),
})
