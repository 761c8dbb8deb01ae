import type { LengthUnit } from '../length.ts'

/** Figures of a scale that was measured: a tenth of a per cent shows. */
const FIGURES = 4

/**
 * Writes a scale that was measured as the trade writes scales, `2.980" = 1'-0"` in inches, `1:4.027` in millimetres, so that
 * it stands beside a stated one alike.
 * @param scale drawn size over true size
 */
export function formatMeasuredScale(scale: number, unit: LengthUnit): string {
  if (unit === 'in') return `${(12 * scale).toPrecision(FIGURES)}" = 1'-0"`
  return scale < 1 ? `1:${(1 / scale).toPrecision(FIGURES)}` : `${scale.toPrecision(FIGURES)}:1`
}
