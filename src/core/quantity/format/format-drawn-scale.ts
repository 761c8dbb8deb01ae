import type { LengthUnit } from '../length.ts'

const SAME = 1e-9

/** The nearest sixteenth, where the value is one. */
function sixteenths(value: number): string | null {
  const parts = Math.round(value * 16)
  if (parts < 1 || Math.abs(value * 16 - parts) > SAME * parts) return null
  const whole = Math.floor(parts / 16)
  let [n, d] = [parts % 16, 16]
  while (n > 0 && n % 2 === 0) [n, d] = [n / 2, d / 2]
  if (n === 0) return String(whole)
  return whole === 0 ? `${n}/${d}` : `${whole} ${n}/${d}`
}

const isWhole = (value: number): boolean => Math.abs(value - Math.round(value)) <= SAME * value

/**
 * Writes the scale of a drawing in the notation of the trade: `3" = 1'-0"` in inches, `1:4` in millimetres; a scale
 * that neither notation has as a decimal, `0.2487`.
 * @param scale drawn size over true size
 */
export function formatDrawnScale(scale: number, unit: LengthUnit): string {
  if (Math.abs(scale - 1) <= SAME) return unit === 'in' ? 'full size' : '1:1'
  if (scale > 1 && isWhole(scale)) return `${Math.round(scale)}:1`
  const toTheFoot = unit === 'in' && scale < 1 ? sixteenths(12 * scale) : null
  if (toTheFoot !== null) return `${toTheFoot}" = 1'-0"`
  const times = 1 / scale
  if (scale < 1 && (isWhole(times) || isWhole(10 * times))) return `1:${Number(times.toFixed(1))}`
  return String(Number(scale.toPrecision(4)))
}
