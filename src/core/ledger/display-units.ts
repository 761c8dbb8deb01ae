import type { DimensionKind, Unit } from '../job/types.ts'
import { formatAngle } from '../quantity/format-angle.ts'
import { formatArea } from '../quantity/format-area.ts'
import { formatCount } from '../quantity/format-count.ts'
import { formatLength } from '../quantity/format-length.ts'

/** How one row is written: its kind, the job's unit, the finest fraction the job uses, and whether with feet. */
export interface Style {
  kind: DimensionKind
  unit: Unit
  /** Of an inch: 16 for sixteenths. */
  denominator: number
  feet: boolean
}

/** From the units core computes in (mm, mm², radians) to those of the table (unit, unit², degrees). */
export function displayFactor(kind: DimensionKind, unit: Unit): number {
  if (kind === 'angle') return 180 / Math.PI
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
        denominator: style.denominator,
        feet: style.feet,
        ...uncertainty,
      })
    case 'angle':
      return formatAngle(value, uncertainty)
    case 'area':
      return formatArea(value, { unit: style.unit, ...uncertainty })
    case 'count':
      return formatCount(value, U > 0 ? U : undefined)
  }
}
