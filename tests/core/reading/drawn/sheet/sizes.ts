import Fraction from 'fraction.js'
import type { Dice } from '../dice.ts'
import { type PlannedFigure, planned } from '../figure-parts.ts'
import type { SheetWays } from './board.ts'

function inchText(inches: number, d: Dice): string {
  const parts = d.pick([8, 16, 16] as const)
  const exact = new Fraction(Math.max(1, Math.round(inches * parts)), parts)
  const feet = inches > 36 && d.happens(0.6) ? exact.div(12).floor() : new Fraction(0)
  const rest = exact.sub(feet.mul(12))
  const whole = rest.floor()
  const part = rest.sub(whole)
  const fraction = part.n > 0n ? `${part.n}/${part.d}` : ''
  const size = whole.n > 0n || fraction === '' ? `${whole.n} ${fraction}`.trim() : fraction
  return feet.n > 0n ? `${feet.n}'-${size}"` : `${size}${d.happens(0.3) ? '"' : ''}`
}

/** A length as a working drawing has it: to an eighth or sixteenth of an inch, in feet where it is long, or to a millimetre. */
export function sizeText(pixels: number, { scale, unit }: SheetWays, d: Dice): string {
  const length = pixels / scale
  if (unit === 'in') return inchText(length, d)
  return d.happens(0.15) ? length.toFixed(1) : String(Math.max(1, Math.round(length)))
}

export const size = (pixels: number, ways: SheetWays, d: Dice): PlannedFigure =>
  planned(sizeText(pixels, ways, d), ways.unit)
