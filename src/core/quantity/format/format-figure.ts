import Fraction from 'fraction.js'
import type { Angle } from '../angle.ts'
import type { Figure, Tolerance } from '../figure.ts'
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

function sizeText(figure: Figure, gauge: GaugeStandard): string | undefined {
  if (figure.gauge) {
    const { number, standard } = figure.gauge
    return `No. ${number} ${standard === gauge ? 'GA' : GAUGE_CALL_OUTS[standard]}`
  }
  if (figure.angle) return formatAngle(figure.angle)
  if (!figure.length) return undefined
  const size = lengthText(figure.length)
  if (figure.square) return `${size} SQ.`
  if (figure.of === 'centres') return `${size} C.C.`
  if (figure.of === 'radius') return `R ${size}`
  if (figure.side)
    return `${figure.drilled ? 'DRILL ' : ''}${size} ${figure.side === 'outside' ? 'O.D.' : 'I.D.'}`
  if (figure.drilled) return `DRILL ${size}`
  return figure.of === 'diameter' ? `Ø ${size}` : size
}

/**
 * Writes a figure in the one standard notation, e.g. `4 HOLES DRILL 9/32" ±1/64" TYP.` Whatever `parseFigure` returned,
 * it returns again from this text but for `text` itself and the graduation of an unreduced fraction.
 *
 * @param context which standard `GA` means where this text is read again; the US Standard of 1893 unless said otherwise
 */
export function formatFigure(figure: Figure, context: { readonly gauge?: GaugeStandard } = {}): string {
  const parts: (string | undefined)[] = [
    figure.count === undefined ? undefined : `${figure.count} ${(figure.counted ?? 'holes').toUpperCase()}`,
    sizeText(figure, context.gauge ?? 'us-standard-1893'),
    figure.tolerance && toleranceText<Length>(figure.tolerance, lengthText),
    figure.angleTolerance && toleranceText<Angle>(figure.angleTolerance, (angle) => formatAngle(angle)),
    figure.typical ? 'TYP.' : undefined,
  ]
  return parts.filter((part) => part !== undefined).join(' ')
}
