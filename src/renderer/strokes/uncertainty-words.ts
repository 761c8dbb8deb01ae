import type { UnnamedMark } from '../../core/job/from-picks/picked-mark.ts'
import { firstPlaces } from '../../core/job/picks/picks-of.ts'
import { symmetric2 } from '../../core/linear-algebra/symmetric2.ts'

/** Pixels to two figures, and never more than four decimals: `0.062 px`. */
export function pixelsInWords(value: number): string {
  const size = Math.abs(value)
  if (size < 0.00005) return '0.0000 px'
  const places = Math.min(4, Math.max(0, 1 - Math.floor(Math.log10(size))))
  return `${value.toFixed(places)} px`
}

/** Standard uncertainties of a mark on a stroke, pixels: across it and along it; of a crossing, the better way first. */
function settled(mark: UnnamedMark): [least: number, most: number] | null {
  if (mark.kind !== 'point' || mark.covariance === undefined) return null
  const [most, least] = symmetric2(mark.covariance).map(({ value }) => Math.sqrt(Math.max(value, 0)))
  return [least ?? 0, most ?? 0]
}

/** How sure a mark is, in words. */
export function markUncertainty(mark: UnnamedMark): string {
  const { sigma, stroke, how } = mark
  const both = settled(mark)
  if (both !== null) {
    const [least, most] = both.map(pixelsInWords)
    return how === 'stroke' && stroke?.as === 'crossing'
      ? `σ ${least} one way and ${most} the other`
      : `σ ${least} across the stroke, ${most} along it`
  }
  if (how !== 'stroke') return `σ ${pixelsInWords(sigma)} in x and in y`
  const n = firstPlaces(mark).length
  return `σ ${pixelsInWords(sigma / Math.sqrt(n))} across it, from ${n} profiles of ${pixelsInWords(sigma)} each`
}

/** Standard uncertainty of a mark across its stroke, pixels; of a crossing: of the better settled way. */
export const acrossStroke = (mark: UnnamedMark): number =>
  settled(mark)?.[0] ?? mark.sigma / Math.sqrt(firstPlaces(mark).length)
