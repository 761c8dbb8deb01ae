import type { Conventions } from '../../job/model/conventions.ts'
import type { Dimension, Unit } from '../../job/model/types.ts'
import type { Angle } from '../../quantity/angle.ts'
import type { Figure, Tolerance } from '../../quantity/figure.ts'
import { formatAngle } from '../../quantity/format/format-angle.ts'
import { formatArea } from '../../quantity/format/format-area.ts'
import { formatFit } from '../../quantity/format/format-fit.ts'
import { formatLength } from '../../quantity/format/format-length.ts'
import type { Length } from '../../quantity/length.ts'
import { parseArea } from '../../quantity/parse/parse-area.ts'
import { parseTolerance } from '../../quantity/parse/parse-tolerance.ts'
import type { FiguresAs } from '../units/look.ts'
import type { LimitsOfSize } from './figure-spread.ts'

/** What a size may be off by as it is stated, and how that is written. */
export interface StatedLimits {
  limits?: LimitsOfSize
  tolerance?: string
}

/** The unit that lengths are looked at in, and whether figures are written in fractions or decimals. */
interface LookedAt {
  unit: Unit
  figuresAs: FiguresAs
}

/**
 * What a length may be off by as it is stated, by its figure, its dimension or the job; empty where nothing states it.
 * @param looked what lengths are looked at in
 */
export function statedLimits(
  figure: Figure,
  dimension: Dimension,
  conventions: Conventions,
  looked: LookedAt,
): StatedLimits {
  const { fit } = figure
  if (figure.tolerance === undefined && fit?.limits !== undefined) {
    const { upper, lower } = fit.limits
    return { limits: { plus: upper, minus: -lower }, tolerance: formatFit(fit) }
  }
  // A class without its limits is shown as it is stated, and none other holds in its place.
  if (figure.tolerance === undefined && fit !== undefined) return { tolerance: fit.code }
  const limits = figure.tolerance ?? statedTolerance(figure, dimension, conventions)
  if (limits === undefined) return {}
  return {
    limits: { plus: Number(limits.plus.mm), minus: Number(limits.minus.mm) },
    tolerance: toleranceInWords(limits, looked),
  }
}

/**
 * The general tolerance of a sheet is for what is made to it, not for the sheet metal as it is bought. None applies to a
 * reference dimension, nor to a limit, which is one.
 */
function statedTolerance(
  figure: Figure,
  dimension: Dimension,
  conventions: Conventions,
): Tolerance<Length> | undefined {
  if (figure.reference || figure.limit) return undefined
  const text = dimension.tolerance ?? (figure.gauge === undefined ? conventions.tolerance : undefined)
  return text === undefined ? undefined : parseTolerance(text, { unit: conventions.unit })
}

/** `±1/32"`, or `+0" −1/64"` where the limits differ. */
function toleranceInWords({ plus, minus }: Tolerance<Length>, { unit, figuresAs }: LookedAt): string {
  const format = { unit, decimals: figuresAs === 'decimals' }
  const [above, below] = [formatLength(plus, format), formatLength(minus, format)]
  return above === below ? `±${above}` : `+${above} −${below}`
}

/** `±15'`, or `+30' −15'` where the limits differ. */
export function angleToleranceInWords({ plus, minus }: Tolerance<Angle>): string {
  const [above, below] = [formatAngle(plus), formatAngle(minus)]
  return above === below ? `±${above}` : `+${above} −${below}`
}

/** The same of an area, of which a dimension states one number. */
export function statedAreaLimits(text: string, unit: Unit): StatedLimits {
  const { system, ...area } = parseArea(text)
  const mm2 = Number(area.mm2)
  const written = unit === system ? text : formatArea(mm2, { unit })
  return { limits: { plus: mm2, minus: mm2 }, tolerance: `±${written}` }
}
