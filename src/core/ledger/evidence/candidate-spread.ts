import type { Conventions } from '../../job/model/conventions.ts'
import { lengthContext } from '../../job/model/length-context.ts'
import type { Dimension, Evidence } from '../../job/model/types.ts'
import { angleInRadians } from '../../quantity/angle.ts'
import { NotationError } from '../../quantity/notation/notation-error.ts'
import { parseArea } from '../../quantity/parse/parse-area.ts'
import { parseFigure } from '../../quantity/parse/parse-figure.ts'

type Printed = Extract<Evidence, { basis: 'printed' }>

/**
 * Standard deviation of what else a figure could be about what it is read as, by the probabilities given: mm, mm² or radians.
 *
 * @param value what it is read as
 */
export function spreadOfCandidates(
  { candidates = [] }: Printed,
  dimension: Dimension,
  value: number,
  conventions: Conventions,
): number {
  let square = 0
  let sum = 0
  for (const { text, probability } of candidates) {
    const other = valueOfCandidate(text, dimension, conventions)
    if (other === null) continue
    square += probability * (other - value) ** 2
    sum += probability
  }
  // Probabilities of more than one together were not normed; of less, the rest is what it is read as.
  return Math.sqrt(square / Math.max(1, sum))
}

/** mm, mm², radians or how many; null for what is no figure of the dimension's kind. */
export function valueOfCandidate(
  text: string,
  { kind }: Pick<Dimension, 'kind'>,
  conventions: Conventions,
): number | null {
  try {
    if (kind === 'area') return Number(parseArea(text).mm2)
    const { length, angle, count } = parseFigure(text, lengthContext(conventions))
    if (kind === 'length') return length === undefined ? null : Number(length.mm)
    if (kind === 'angle') return angle === undefined ? null : angleInRadians(angle)
    return kind === 'count' ? (count ?? null) : null
  } catch (error) {
    if (error instanceof NotationError) return null
    throw error
  }
}
