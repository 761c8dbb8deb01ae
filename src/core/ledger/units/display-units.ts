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

/** Figures that a value may be: the nearest, and the first and the last of them where there are several. */
export interface NearFigures {
  near: string
  range?: [first: string, last: string]
}

/** Of so many figures that all lie within U none is worth naming. */
const MOST_NEAR = 4

/**
 * The figures as the job writes them that lie within U of a value: inches to its own fractions, whole millimetres, whole
 * degrees; undefined where there is none, or so many that they tell nothing.
 * @param agrees whether other evidence lets a figure, mm or radians, be
 */
export function nearFigures(
  value: number,
  U: number,
  style: Style,
  agrees: (near: number) => boolean = () => true,
): NearFigures | undefined {
  const step = stepOf(style)
  if (step === undefined || !(U > 0) || U > MOST_NEAR * step) return undefined
  let first = Math.ceil((value - U) / step)
  let last = Math.floor((value + U) / step)
  if (first <= 0 && last >= 0) return undefined
  while (first <= last && !agrees(first * step)) first++
  while (last >= first && !agrees(last * step)) last--
  const several = last - first
  if (several < 0 || several >= MOST_NEAR) return undefined
  const write = (steps: number): string => figureOf(steps, step, style)
  const near = write(Math.min(Math.max(Math.round(value / step), first), last))
  return several === 0 ? { near } : { near, range: [write(first), write(last)] }
}

function figureOf(steps: number, step: number, style: Style): string {
  if (style.kind === 'angle') return formatAngle(radians(steps * step))
  const unit = style.figuresIn
  // In inches as the value is, so that the two can be compared at a glance.
  const figured = { ...asFigured(steps * step, { ...style, unit }), feet: false }
  // By its parts: an exact fraction of a double is slow, and there are thousands.
  return unit === 'in' && steps > 0
    ? formatParts(steps, figured.denominator, figured)
    : formatLength(steps * step, figured)
}

/** From one figure to the next, mm or radians. */
function stepOf({ kind, figuresIn, finest }: Style): number | undefined {
  if (kind === 'angle') return WHOLE_DEGREE
  if (kind !== 'length') return undefined
  return figuresIn === 'in' ? 25.4 / denominatorFor(finest) : 1
}

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
