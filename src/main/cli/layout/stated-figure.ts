import type { Unit } from '../../../core/job/model/types.ts'
import type { FigureReading } from '../../../core/reading/figure-reading.ts'

/** Millimetres in an inch, exactly: BS 350, ANSI B48.1. */
const INCH = 25.4

/** What a figure's value is in: the unit that is asked for, degrees, or so many. */
export type FigureUnit = Unit | 'degrees' | 'count'

/** More digits come from the way that a value is worked out, not from the figure. */
const DIGITS = 12

/** A figure's value in the unit that is asked for; without a figure, nothing. */
export function valueIn(
  unit: Unit,
  { value, kind }: Pick<FigureReading, 'value' | 'kind'>,
): { value: number; unit: FigureUnit } | { value: null; unit: null } {
  if (value === null || kind === null || kind === 'area') return { value: null, unit: null }
  if (kind === 'angle') return { value, unit: 'degrees' }
  if (kind === 'count') return { value, unit: 'count' }
  return { value: Number((unit === 'in' ? value / INCH : value).toPrecision(DIGITS)), unit }
}
