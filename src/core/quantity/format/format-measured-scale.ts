import type { LengthUnit } from '../length.ts'

/** Figures of a scale that was measured: a tenth of a per cent shows. */
const FIGURES = 4

const FULL_SIZE = (1).toPrecision(FIGURES)

const inverse = (scale: number): string => {
  const times = (1 / scale).toPrecision(FIGURES)
  return Number(times) < 1 ? FULL_SIZE : times
}

/**
 * Writes a scale that was measured as the trade writes scales, `2.980" = 1'-0"` in inches, `1:4.027` in millimetres, so that
 * it stands beside a stated one alike.
 * @param scale drawn size over true size
 */
export function formatMeasuredScale(scale: number, unit: LengthUnit): string {
  if (unit === 'in') return `${(12 * scale).toPrecision(FIGURES)}" = 1'-0"`
  const larger = scale.toPrecision(FIGURES)
  // Full size is written one way only, or two scales of one view would be turned round against each other.
  return scale < 1 || larger === FULL_SIZE ? `1:${inverse(scale)}` : `${larger}:1`
}
