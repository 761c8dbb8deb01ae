import { radians, toDegrees } from '../../geometry/angle-units.ts'
import type { Unit } from '../../job/model/types.ts'
import { formatAngle } from '../../quantity/format/format-angle.ts'
import { formatArea } from '../../quantity/format/format-area.ts'
import { formatCount } from '../../quantity/format/format-count.ts'
import { formatLength, formatParts } from '../../quantity/format/format-length.ts'
import type { QuantityKind } from '../../quantity/quantity-kind.ts'
import type { Look } from './look.ts'

/** How the values of one row are set: its kind, how they are looked at, and how the job writes its figures. */
export interface Style extends Look {
  kind: QuantityKind
  /** The unit that the job writes its figures in, whatever it is looked at in. */
  figuresIn: Unit
  /** The finest fraction of an inch in common use in the job: 16 for sixteenths; null when there is none. */
  finest: number | null
  /** From this length on, mm, the job writes feet; null: never. */
  feetFrom: number | null
}

/** From the units core computes in (mm, mm², radians) to those of the table (unit, unit², degrees). */
export function displayFactor(kind: QuantityKind, unit: Unit): number {
  if (kind === 'angle') return toDegrees(radians(1))
  if (kind === 'count' || unit === 'mm') return 1
  return kind === 'area' ? 1 / 25.4 ** 2 : 1 / 25.4
}

/**
 * A value that is no figure as it is written: a decimal to the place where its expanded uncertainty U ends; one that
 * was worked out from exact figures alone, U 0, as a figure where it is one of the job's fractions.
 */
export function writeMeasured(value: number, U: number, style: Omit<Style, 'figuresIn'>): string {
  const uncertainty = U > 0 ? { uncertainty: U } : {}
  switch (style.kind) {
    case 'length':
      return formatLength(value, { ...asFigured(value, style), ...uncertainty })
    case 'angle':
      return formatAngle(radians(value), U > 0 ? { uncertainty: radians(U) } : {})
    case 'area':
      return formatArea(value, { unit: style.unit, ...uncertainty })
    case 'count':
      return formatCount(value, U > 0 ? U : undefined)
  }
}

/**
 * The nearest figure as the job writes them: inches to its own fractions, whole millimetres, whole degrees; undefined
 * where a value lies within U of none, or of two. Figures that stand closer than U are not told apart: then the coarser
 * fraction is named, and no millimetre or degree.
 * @param agrees whether other evidence lets a figure, mm or radians, be
 */
export function nearFigure(
  value: number,
  U: number,
  style: Style,
  agrees: (near: number) => boolean = () => true,
): string | undefined {
  if (!(U > 0) || !Number.isFinite(U)) return undefined
  const parts = partsOf(style, U)
  if (parts === undefined) return undefined
  const step = wholeOf(style) / parts
  const steps = Math.round(value / step)
  const near = steps * step
  const other = near < value ? near + step : near - step
  if (steps === 0 || Math.abs(near - value) > U || Math.abs(other - value) <= U || !agrees(near))
    return undefined
  if (style.kind === 'angle') return formatAngle(radians(near))
  const unit = style.figuresIn
  // In inches as the value is, so that the two can be compared at a glance.
  const figured = { ...asFigured(near, { ...style, unit }), denominator: parts, feet: false }
  // By its parts: an exact fraction of a double is slow, and there are thousands.
  return unit === 'in' && steps > 0 ? formatParts(steps, parts, figured) : formatLength(near, figured)
}

/** Into how many parts a whole is divided for naming a figure near a value; undefined where no figure tells anything. */
function partsOf({ kind, figuresIn, finest }: Style, U: number): number | undefined {
  if (kind !== 'length' && kind !== 'angle') return undefined
  const whole = wholeOf({ kind, figuresIn })
  let parts = kind === 'length' && figuresIn === 'in' ? denominatorFor(finest) : 1
  while (parts > 1 && whole / parts < U) parts /= 2
  return Number.isInteger(parts) && whole / parts >= U ? parts : undefined
}

/** An inch or a millimetre, mm; a degree, radians. */
const wholeOf = ({ kind, figuresIn }: Pick<Style, 'kind' | 'figuresIn'>): number =>
  kind === 'angle' ? WHOLE_DEGREE : figuresIn === 'in' ? 25.4 : 1

const WHOLE_DEGREE = 1 / displayFactor('angle', 'mm')

const asFigured = (value: number, { unit, figuresAs, finest, feetFrom }: Omit<Style, 'figuresIn'>) => ({
  unit,
  denominator: denominatorFor(finest),
  decimals: figuresAs === 'decimals',
  feet: feetFrom !== null && Math.abs(value) >= feetFrom,
})

/** A rule is graduated to sixteenths at least. Common practice, no source. */
const COARSEST = 16

/** The fractions of an inch that figures are written in: the job's own, but at least sixteenths. */
const denominatorFor = (finest: number | null): number => Math.max(finest ?? COARSEST, COARSEST)
