import type { Pixel } from '../../geometry/frames.ts'
import type { NoStrokeReason } from '../../words/strokes.ts'
import { guessAt } from '../fit/strip-equations.ts'
import type { Traced } from '../trace/trace-stroke.ts'
import type { NoStroke, Profile, StrokeShape } from './stroke-types.ts'

export const noStroke = (because: NoStrokeReason): NoStroke => ({ kind: 'none', because })

/** The shape of a traced stroke, as it is told. */
export const shapeOf = ({ fit }: Traced): StrokeShape => ({
  width: fit.width,
  blur: fit.blur,
  contrast: Math.abs(fit.contrast),
  dark: fit.contrast < 0,
  noise: Math.sqrt(fit.variance),
})

/**
 * By how much a blurred and pixel-averaged round stroke looks nearer to its centre than it is, pixels: half of the
 * curvature times the variance of the blur and of the pixel (1/12), to first order.
 */
export const roundingShift = ({ strip, fit }: Traced): number =>
  (strip.curve.curvature * (fit.blur ** 2 + 1 / 12)) / 2

/** Where the wanted reading lies in each piece, as it is told. @param shift of the reading; sigma of each piece */
export function profilesOf(traced: Traced, shift: number, sigma: number): Profile[] {
  const { strip, fit, centres, judged } = traced
  return strip.pieces.map((piece, k): Profile => {
    const kept = judged.kept[k] === true
    const centre = centres[k]
    const offset = kept && centre ? centre.offset : guessAt(piece, fit).offset
    const at: Pixel = strip.curve.place(piece.middle, offset + shift - roundingShift(traced))
    const because = judged.because[k]
    return because === undefined ? { centre: at, sigma, kept } : { centre: at, sigma, kept, because }
  })
}
