import { element } from '../linear-algebra/element.ts'
import type { Closing } from './closings.ts'
import type { StatedSize } from './reference.ts'

/** A stated size that stands in a closing. */
export interface Member {
  size: StatedSize
  /** Of all its equations. */
  factor: number
  /** The closing follows from those before it. */
  last: boolean
}

/** Factors of a sum are ±1 but for the bends of what is picked. */
const NEARLY_ONE = 0.02

/** Whether a member counts for more than such bends. */
export const isFactor = ({ factor }: Member): boolean => Math.abs(factor) > NEARLY_ONE

/** The stated sizes of a closing, in their order. */
export function membersOf(
  sizes: readonly StatedSize[],
  { row: last, factors }: Pick<Closing, 'row' | 'factors'>,
): Member[] {
  let row = 0
  return sizes.flatMap((size): Member[] => {
    const rows = size.equations.map(() => row++)
    const factor = rows.reduce((sum, i) => sum + element(factors, i), 0)
    const stands = rows.some((i) => element(factors, i) !== 0)
    return stands ? [{ size, factor, last: rows.includes(last) }] : []
  })
}

/** Whether lengths add up to others: then what they miss by is known from the figures alone. */
export const areASum = (members: readonly Member[]): boolean =>
  members.every(
    ({ factor, size }) => Math.abs(Math.abs(factor) - 1) < NEARLY_ONE && size.part !== 'squareness',
  )

/** mm */
export const statedOf = ({ equations }: StatedSize): number => element(equations, 0).stated.value
