import type { PagePart } from '../../words/page-in-words.ts'
import { reason, type ServiceReason } from '../../words/services-words.ts'

/** Pixels per inch across and down. */
export interface Density {
  x: number
  y: number
}

/** Further apart than rounding explains. */
const UNEQUAL = 0.005

/** More is what arithmetic left behind. */
const DIGITS = 9

/**
 * One resolution for a page whose two may differ: their geometric mean, so that its area is right. The scale of a
 * sheet is calibrated in any case; this number is for showing, and for a first guess.
 */
export const oneDpi = ({ x, y }: Density): number => Number(Math.sqrt(x * y).toPrecision(DIGITS))

/** What a person should know of a page whose two resolutions differ. */
export const unequalRemark = (page: PagePart, { x, y }: Density): ServiceReason[] =>
  Math.abs(x / y - 1) <= UNEQUAL ? [] : [reason('page.unequal-resolution', { ...page, x, y })]

/** A density that a file may well mean; undefined when it says nothing of use. */
export const soundDensity = (x: number, y: number): Density | undefined =>
  [x, y].every((one) => Number.isFinite(one) && one >= 1 && one <= 100_000) ? { x, y } : undefined
