import { symmetric2 } from '../../core/geometry/symmetric2.ts'
import type { Mark } from '../../core/job/model/types.ts'
import type { Fitted } from '../picking/fitted.ts'

/** Pixels to two figures, and never more than four decimals: `0.062 px`. */
export function pixelsInWords(value: number): string {
  const size = Math.abs(value)
  if (size < 0.00005) return '0.0000 px'
  const places = Math.min(4, Math.max(0, 1 - Math.floor(Math.log10(size))))
  return `${value.toFixed(places)} px`
}

type Shaped = Pick<Fitted, 'sigma' | 'covariance'> & { as: string | undefined; n: number }

const words = ({ sigma, covariance, as, n }: Shaped): string => {
  if (covariance !== undefined) {
    const [most, least] = symmetric2(covariance).map(({ value }) => Math.sqrt(Math.max(value, 0)))
    return as === 'crossing'
      ? `σ ${pixelsInWords(least ?? 0)} one way and ${pixelsInWords(most ?? 0)} the other`
      : `σ ${pixelsInWords(least ?? 0)} across the stroke, ${pixelsInWords(most ?? 0)} along it`
  }
  if (as === undefined) return `σ ${pixelsInWords(sigma)} in x and in y`
  return `σ ${pixelsInWords(sigma / Math.sqrt(n))} across it, from ${n} profiles of ${pixelsInWords(sigma)} each`
}

/** How sure a mark is, in words. */
export const markUncertainty = (mark: Mark): string =>
  words({
    sigma: mark.sigma,
    as: mark.how === 'stroke' ? (mark.stroke?.as ?? 'stroke') : undefined,
    n: mark.kind === 'point' ? 1 : mark.pixels.length,
    ...(mark.kind === 'point' && mark.covariance !== undefined ? { covariance: mark.covariance } : {}),
  })

/** How sure what was found is, in words. */
export const fittedUncertainty = ({ sigma, covariance, stroke, pixels }: Fitted): string =>
  words({ sigma, as: stroke.as, n: pixels.length, ...(covariance === undefined ? {} : { covariance }) })
