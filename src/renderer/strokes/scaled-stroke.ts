import { type Pixel, pixel } from '../../core/geometry/frames.ts'
import type { FoundStroke } from '../../core/imaging/index.ts'

/**
 * A stroke that was found in a coarser picture, as it lies in the scan: a picture of half the size is a scan of half the
 * dots per inch, and all lengths in it, uncertainties among them, are so many times as long in the scan.
 * @param step pixels of the scan for each of the picture's
 */
export function scaledStroke(found: FoundStroke, step: number): FoundStroke {
  const at = ([x, y]: Pixel): Pixel => pixel(x * step, y * step)
  const squared = <T extends readonly number[]>(values: T): T =>
    values.map((value) => value * step ** 2) as unknown as T
  const shared = {
    shape: { ...found.shape, width: found.shape.width * step, blur: found.shape.blur * step },
    section: { ...found.section, at: found.section.at.map((far) => far * step) },
    profiles: found.profiles.map((one) => ({ ...one, centre: at(one.centre), sigma: one.sigma * step })),
  }
  switch (found.kind) {
    case 'point':
      return { ...found, ...shared, pixel: at(found.pixel), across: found.across * step }
    case 'crossing':
      return { ...found, ...shared, pixel: at(found.pixel), covariance: squared(found.covariance) }
    case 'line': {
      const [from, to] = found.ends
      return { ...found, ...shared, ends: [at(from), at(to)], sigma: found.sigma * step }
    }
    default:
      return {
        ...found,
        ...shared,
        centre: at(found.centre),
        radius: found.radius * step,
        sigma: found.sigma * step,
        covariance: squared(found.covariance),
      }
  }
}
