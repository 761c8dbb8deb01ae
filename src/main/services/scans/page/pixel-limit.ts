import type { Limits } from '../../../../contract/limits.ts'
import { howToRaise } from '../../words/limits-in-words.ts'
import type { PixelSize } from './pixel-size.ts'

/** Why a page has too many pixels, a sentence; undefined when it has not. @param page what the sentence calls it */
export function tooManyPixels(
  page: string,
  { width, height }: PixelSize,
  { pixels }: Pick<Limits, 'pixels'>,
  instead = 'scan it with fewer dots to the inch',
): string | undefined {
  if (width * height <= pixels) return undefined
  return (
    `${page} has ${width.toLocaleString('en')} × ${height.toLocaleString('en')} pixels, more than the ` +
    `${pixels.toLocaleString('en')} that are taken in: ${instead}, or ${howToRaise('pixels')}.`
  )
}
