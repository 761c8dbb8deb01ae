import { type Length, partsOfAnInch } from './length.ts'

/** Divisions of an inch that rules and drawings of the trade have. */
const BINARY = [2, 4, 8, 16, 32, 64]

/** The fraction of an inch that a length is written to, in a list; an empty one where it is written to none. */
export function fractionOf(length: Length): number[] {
  const parts = partsOfAnInch(length)
  return parts !== null && BINARY.includes(parts) ? [parts] : []
}

/** One figure in ten makes a fraction common; a single finer one does not change how the others are meant. */
const COMMON = 0.1

/** The finest of all fractions in a job that is in common use: 16 for sixteenths; null when there are none. */
export function finestInUse(fractions: readonly number[]): number | null {
  const finestFirst = [...fractions].sort((a, b) => b - a)
  return finestFirst[Math.max(0, Math.ceil(COMMON * finestFirst.length) - 1)] ?? null
}

/** What a rule is graduated to at least, parts of an inch. Common practice, no source. */
const COARSEST = 16

/**
 * The graduation a figure is written to, mm. Fractions are written reduced (6/16 as 3/8, 16/16 as 1), so a fraction or
 * whole number of inches counts as written to the finest fraction in common use in the job, sixteenths at least: before
 * there is any fraction in the job, it counts as written to these.
 *
 * @param finest as `finestInUse` gives it
 */
export function graduationOf(length: Length, finest: number | null): number {
  const own = Number(length.graduation)
  const parts = partsOfAnInch(length)
  const credited = Math.max(finest ?? COARSEST, COARSEST)
  // A third or a tenth of an inch is no reduced fraction of a rule.
  if (parts === null || parts > credited || (parts > 1 && !BINARY.includes(parts))) return own
  return 25.4 / credited
}
