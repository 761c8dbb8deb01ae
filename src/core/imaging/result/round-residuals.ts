import type { Pixel } from '../../geometry/frames.ts'
import { guessAt } from '../fit/strip-equations.ts'
import type { Traced } from '../trace/trace-stroke.ts'

/** F beyond which an ellipse is taken to be more than chance: 1 % for 2 and about 30 degrees of freedom. */
const CLEARLY_OVAL = 5.4

/**
 * Residuals of the kept centres of a round stroke, pixels, and their degrees of freedom: about the circle through them,
 * or about the ellipse that it was traced by when that fits clearly better (F test).
 */
export function roundResiduals(
  { strip, fit, centres, judged }: Traced,
  kept: readonly Pixel[],
  centre: readonly [number, number],
  radius: number,
): { residuals: number[]; freedoms: number } {
  const circle = kept.map(([x, y]) => Math.hypot(x - centre[0], y - centre[1]) - radius)
  const freedoms = kept.length - strip.curve.parameters
  const asCircle = { residuals: circle, freedoms: kept.length - 3 }
  if (strip.curve.parameters === 3 || freedoms < 1) return asCircle
  const oval = residualsOfFit({ strip, fit, centres, judged })
  const [round, ellipse] = [squaresOf(circle), squaresOf(oval)]
  const better = (round - ellipse) / 2 / Math.max(ellipse / freedoms, 1e-12)
  return better > CLEARLY_OVAL ? { residuals: oval, freedoms } : asCircle
}

/** How far the kept centres of a stroke are from its fit, pixels, in order. */
export const residualsOfFit = ({ strip, fit, centres, judged }: Traced): number[] =>
  strip.pieces.flatMap((piece, k) => {
    const centre = centres[k]
    return centre && judged.kept[k] ? [centre.offset - guessAt(piece, fit).offset] : []
  })

const squaresOf = (residuals: readonly number[]): number => residuals.reduce((s, r) => s + r * r, 0)
