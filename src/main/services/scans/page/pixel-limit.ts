import type { Limits } from '../../../../contract/limits.ts'
import type { PagePart } from '../../words/page-in-words.ts'
import { reason, type ServiceReason } from '../../words/services-words.ts'
import type { PixelSize } from './pixel-size.ts'

/** Why a page has too many pixels; undefined when it has not. @param instead what makes fewer of them */
export function tooManyPixels(
  page: PagePart,
  { width, height }: PixelSize,
  { pixels: most }: Pick<Limits, 'pixels'>,
  instead: 'scan' | 'draw' = 'scan',
): ServiceReason | undefined {
  if (width * height <= most) return undefined
  return reason('page.too-many-pixels', { ...page, width, height, most, instead })
}
