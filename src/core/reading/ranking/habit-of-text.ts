import type { Figure } from '../../quantity/figure.ts'
import { exactInches, type Length } from '../../quantity/length.ts'
import { densityOfSize } from './density-of-size.ts'
import { divisionOf, INCH_MARK, type SheetHabit, shareOfDivision } from './sheet-habit.ts'

/** How much seldomer than what is usual. Common practice, no source. */
const SELDOM = 0.02

/** Zeros before a number, which no draughtsman writes but before a point or between feet and a fraction. */
const IDLE_ZERO = /(?<![\d.])0\d|(?<![\d.'])(?<!['] ?-? ?)0 +\d+ ?\//
/** A fraction right after feet, without the 0 that keeps it from being one of a foot. */
const FEET_AND_BARE_FRACTION = /'\s*-?\s*\d+ ?\/ ?\d/
const FOOT = 12

/**
 * How likely it is, before anything is seen of it, that a figure of this sheet is just this text: how its sort divides the
 * unit and how many sizes that gives, how common such sizes are, and how they are written.
 */
export function habitOfText(text: string, figure: Figure, habit: SheetHabit): number {
  let share = habit.of.get(figure.of) ?? SELDOM
  if (IDLE_ZERO.test(text)) share *= SELDOM
  const { length, angle, count, gauge } = figure
  if (gauge !== undefined) return share / 30
  if (angle !== undefined) return (share * Number(angle.graduation)) / 90
  if (length !== undefined) return share * habitOfLength(text, length, habit)
  return count === undefined ? share * SELDOM : share / (count * (count + 1))
}

function habitOfLength(text: string, length: Length, habit: SheetHabit): number {
  const division = divisionOf(length)
  let share = shareOfDivision(habit, division) * densityOfSize(Number(length.mm)) * spacing(length, division)
  if (Number(length.mm) === 0) share *= SELDOM
  if (length.system !== 'in') return share
  share *= INCH_MARK.test(text) ? habit.marked : 1 - habit.marked
  const inches = exactInches(length)
  // 6/16 for 3/8: what is written is not what is reduced.
  if (length.fraction === true && Number(length.graduation) < (25.4 / Number(inches.d)) * (1 - 1e-9))
    share *= SELDOM
  if (Number(inches) >= FOOT) share *= length.feet ? habit.inFeet : 1 - habit.inFeet
  else if (length.feet) share *= SELDOM
  if (length.feet && FEET_AND_BARE_FRACTION.test(text)) share *= SELDOM
  return share
}

/** How many fractions that are no common ones of a rule there are to choose among: thirds, tenths, ... */
const UNCOMMON = 20

/** How far apart the sizes are that are written so, mm: sixteenths in lowest terms, an eighth of an inch. */
function spacing({ graduation }: Length, division: string): number {
  const step = Number(graduation)
  if (division === '1/n') {
    const parts = Math.round(25.4 / step)
    return (step * (parts / lowerThan(parts))) / UNCOMMON / (parts > 32 ? parts : 1)
  }
  return division.startsWith('1/') ? 2 * step : step
}

/** How many numbers below one have no part in common with it: so many fractions there are in lowest terms. */
function lowerThan(parts: number): number {
  let count = parts
  let rest = parts
  for (let p = 2; p * p <= rest; p++) {
    if (rest % p !== 0) continue
    while (rest % p === 0) rest /= p
    count -= count / p
  }
  return rest > 1 ? count - count / rest : count
}
