import type { Figure } from '../../quantity/figure.ts'

/** LimitsOfSize above and below the stated size, mm or radians; below nothing where both lie on one side of it. */
export interface LimitsOfSize {
  readonly plus: number
  readonly minus: number
}

/** What a figure says its size lies within, in the units it is computed in. */
export interface Spread {
  readonly middle: number
  readonly half: number
  /** Whether the size itself may be taken as it stands when the figure is adopted. */
  readonly exact: boolean
}

/**
 * What a figure is compared by: within its tolerance when one is stated, otherwise within half its last graduation.
 *
 * FULL and BARE say on which side of the graduation the size lies, so each has half of what was rounded to it; ABT.
 * allows a whole graduation to either side; none of them less than a tolerance that is stated. Common practice, no source.
 */
export function spreadOf(
  { value, graduation, limits }: { value: number; graduation: number; limits?: LimitsOfSize | undefined },
  looseness: Figure['looseness'],
): Spread {
  const rounded = graduation / 2
  const stated = limits === undefined ? 0 : (limits.plus + limits.minus) / 2
  const within = limits === undefined ? rounded : stated
  const middle = limits === undefined ? value : value + (limits.plus - limits.minus) / 2
  switch (looseness) {
    case undefined:
      return { middle, half: within, exact: true }
    case 'about':
      return { middle, half: Math.max(within, graduation), exact: false }
    case 'full':
      return { middle: value + rounded / 2, half: Math.max(stated, rounded / 2), exact: false }
    case 'bare':
      return { middle: value - rounded / 2, half: Math.max(stated, rounded / 2), exact: false }
  }
}
