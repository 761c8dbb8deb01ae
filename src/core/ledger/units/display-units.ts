import { radians, toDegrees } from '../../geometry/angle-units.ts'
import type { Unit } from '../../job/model/types.ts'
import { formatAngle } from '../../quantity/format/format-angle.ts'
import { formatArea } from '../../quantity/format/format-area.ts'
import { formatCount } from '../../quantity/format/format-count.ts'
import { formatLength } from '../../quantity/format/format-length.ts'
import type { QuantityKind } from '../../quantity/quantity-kind.ts'

/** How one row is written: its kind, the job's unit, the finest fraction the job uses, and whether with feet. */
export interface Style {
  kind: QuantityKind
  unit: Unit
  /** The finest fraction of an inch in common use in the job: 16 for sixteenths; null when there is none. */
  finest: number | null
  feet: boolean
}

/** From the units core computes in (mm, mm², radians) to those of the table (unit, unit², degrees). */
export function displayFactor(kind: QuantityKind, unit: Unit): number {
  if (kind === 'angle') return toDegrees(radians(1))
  if (kind === 'count' || unit === 'mm') return 1
  return kind === 'area' ? 1 / 25.4 ** 2 : 1 / 25.4
}

/** A measured value in shop notation, with no more decimals than its expanded uncertainty U is worth. */
export function writeMeasured(value: number, U: number, style: Style): string {
  const uncertainty = U > 0 ? { uncertainty: U } : {}
  switch (style.kind) {
    case 'length':
      return formatLength(value, {
        unit: style.unit,
        denominator: denominatorFor(U, style.finest),
        feet: style.feet,
        ...uncertainty,
      })
    case 'angle':
      return formatAngle(radians(value), U > 0 ? { uncertainty: radians(U) } : {})
    case 'area':
      return formatArea(value, { unit: style.unit, ...uncertainty })
    case 'count':
      return formatCount(value, U > 0 ? U : undefined)
  }
}

/** A rule is graduated to sixteenths at least, and to sixty-fourths at most. Common practice, no source. */
const COARSEST = 16
const FINEST = 64

/**
 * The fraction of an inch to which a measured value is written: the job's own, but at least sixteenths; where the
 * job has none, the finest whose graduation is not below what the value is uncertain by.
 */
function denominatorFor(U: number, finest: number | null): number {
  if (finest !== null) return Math.max(finest, COARSEST)
  let denominator = FINEST
  while (denominator > 1 && 25.4 / denominator < U) denominator /= 2
  return denominator
}
