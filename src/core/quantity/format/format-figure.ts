import Fraction from 'fraction.js'
import type { Angle } from '../angle.ts'
import type { Figure, Looseness, Slope, Thread, Tolerance } from '../figure.ts'
import { GAUGE_CALL_OUTS, type GaugeStandard } from '../gauges.ts'
import { exactInches, type Length, MM_PER_INCH } from '../length.ts'
import { exactPlaces, mixedNumber, toPlaces } from './decimals.ts'
import { formatAngle } from './format-angle.ts'
import { formatLength } from './format-length.ts'

/** Decimal places of a graduation of 0.1, 0.01, ...; 0 for any other. */
function placesOf(graduation: Fraction): number {
  const parts = graduation.d.toString()
  return graduation.n === 1n && /^10+$/.test(parts) ? parts.length - 1 : 0
}

function decimalText(value: Fraction, graduation: Fraction): string {
  const places = exactPlaces(value)
  return places === undefined
    ? mixedNumber(value.n, value.d)
    : toPlaces(value, Math.max(places, placesOf(graduation)))
}

/** Fractions stay fractions, decimals stay decimals, and feet stay feet. */
function lengthText(length: Length): string {
  if (length.system === 'mm') return `${decimalText(length.mm, length.graduation)} mm`
  if (length.fraction) return formatLength(length, { unit: 'in' })
  const inches = exactInches(length)
  const step = length.graduation.div(MM_PER_INCH)
  const foot = new Fraction(12n, 1n)
  if (!length.feet || inches.compare(foot) < 0) return `${decimalText(inches, step)}"`
  const feet = inches.div(foot).floor()
  return `${feet.n}'-${decimalText(inches.sub(feet.mul(foot)), step)}"`
}

function toleranceText<T>(tolerance: Tolerance<T>, write: (size: T) => string): string {
  const plus = write(tolerance.plus)
  const minus = write(tolerance.minus)
  return plus === minus ? `±${plus}` : `+${plus} −${minus}`
}

/** `GA` where that means the table taken, otherwise the call-out that names it. */
function gaugeText(
  { number, standard, assumed }: NonNullable<Figure['gauge']>,
  meant?: GaugeStandard,
): string {
  const usual = meant === undefined ? assumed === true : meant === standard
  return `No. ${number} ${usual ? 'GA' : GAUGE_CALL_OUTS[standard]}`
}

/** Size and pitch of a thread: `1/2"-13 UNC`, `M12 × 1.75`. */
function threadText({ perInch, pitch, form }: Thread, size: string): string {
  if (form === 'M') return `M${size.replace(' mm', '')}${pitch === undefined ? '' : ` × ${pitch}`}`
  return perInch === undefined ? `${size} ${form}` : `${size}-${perInch} ${form}`
}

/** The larger limit first, each to the same last graduation. */
function limitsText({ mm, ...length }: Length, half: Fraction): string {
  const [upper, lower] = [mm.add(half), mm.sub(half)]
  const unit = length.system === 'mm' ? new Fraction(1n, 1n) : MM_PER_INCH
  const places = Math.max(
    1,
    placesOf(length.graduation.div(unit)),
    exactPlaces(upper.div(unit)) ?? 0,
    exactPlaces(lower.div(unit)) ?? 0,
  )
  const mark = length.system === 'mm' ? ' mm' : '"'
  return `${toPlaces(upper.div(unit), places)}/${toPlaces(lower.div(unit), places)}${mark}`
}

/** `1 IN 8`, with TAPER before it where it is said to be one. */
function slopeText({ rise, run, taper }: Slope): string {
  return `${taper ? 'TAPER ' : ''}${rise} IN ${run}`
}

/** A text with decimal commas; a point stays where three digits follow, for a comma would say thousands there. */
export const withCommas = (text: string): string => text.replace(/(\d+)\.(\d+)/g, commaFor)

const commaFor = (all: string, whole: string, parts: string): string =>
  parts.length === 3 && !/^0+$/.test(whole) ? all : `${whole},${parts}`

function sizeText(figure: Figure, gauge: GaugeStandard | undefined): string | undefined {
  if (figure.gauge) return gaugeText(figure.gauge, gauge)
  if (figure.angle) return formatAngle(figure.angle)
  if (figure.slope) return slopeText(figure.slope)
  if (!figure.length) return undefined
  const size =
    figure.twoLimits && figure.tolerance
      ? limitsText(figure.length, figure.tolerance.plus.mm)
      : lengthText(figure.length)
  if (figure.thread) return threadText(figure.thread, size)
  if (figure.square) return `${size} SQ.`
  if (figure.of === 'centres') return `${size} C.C.`
  if (figure.of === 'radius') return figure.notes?.includes('SPHER. R') ? size : `R ${size}`
  if (figure.side)
    return `${figure.drilled ? 'DRILL ' : ''}${size} ${figure.side === 'outside' ? 'O.D.' : 'I.D.'}`
  if (figure.drilled) return `DRILL ${size}`
  return figure.of === 'diameter' ? `Ø ${size}` : size
}

const LOOSENESS: Readonly<Record<Looseness, string>> = { about: 'ABT.', full: 'FULL', bare: 'BARE' }

/** How many of what stands before the size: `4 HOLES`, `8 BOLTS`, `4X`. */
function countText({ count, counted, fastener, mayBeSection, of, notes }: Figure): string | undefined {
  if (count === undefined) return fastener?.toUpperCase()
  const things = (fastener ?? counted)?.toUpperCase()
  if (things !== undefined) return `${count} ${things}`
  // A bare number of spaces has its note after it.
  if (of === 'count') return `${count} ${notes?.[0] ?? ''}`.trim()
  return mayBeSection ? `${count} ×` : `${count}X`
}

/**
 * Writes a figure in the one standard notation, e.g. `4 HOLES DRILL 9/32" ±1/64" TYP.` Whatever `parseFigure` returned,
 * it returns again from this text but for `text` itself and the graduation of an unreduced fraction.
 *
 * @param context which standard `GA` means where this text is read again; where that is not said, `GA` is written of a
 *   gauge whose standard was not said either
 */
export function formatFigure(figure: Figure, context: { readonly gauge?: GaugeStandard } = {}): string {
  const bareCount = figure.of === 'count' && (figure.counted ?? figure.fastener) === undefined
  const parts: (string | undefined)[] = [
    countText(figure),
    sizeText(figure, context.gauge),
    figure.fit?.code,
    figure.tolerance && !figure.twoLimits ? toleranceText<Length>(figure.tolerance, lengthText) : undefined,
    figure.angleTolerance && toleranceText<Angle>(figure.angleTolerance, (angle) => formatAngle(angle)),
    figure.limit && `${figure.limit.toUpperCase()}.`,
    figure.looseness && LOOSENESS[figure.looseness],
    figure.notToScale ? 'N.T.S.' : undefined,
    figure.reference ? 'REF.' : undefined,
    figure.typical ? 'TYP.' : undefined,
    ...(figure.notes ?? []).slice(bareCount ? 1 : 0),
  ]
  const text = parts.filter((part) => part !== undefined).join(' ')
  return figure.decimalComma ? withCommas(text) : text
}
