import { ServiceError } from '../../service-error.ts'
import type { PagePart } from '../../words/page-in-words.ts'
import { reason, type ServiceReason } from '../../words/services-words.ts'
import type { PixelSize } from './pixel-size.ts'

/** Whether a page has the pixels that are said of it. */
export const hasSize = (found: PixelSize, said: PixelSize): boolean =>
  found.width === said.width && found.height === said.height

/** Why a page is not the one that the job says: it has other pixels. */
export function otherSize(page: PagePart, found: PixelSize, said: PixelSize): ServiceReason {
  const [{ width, height }, wanted] = [found, { width: said.width, height: said.height }]
  return reason('page.other-size', { ...page, width, height, said: wanted })
}

/**
 * A page must have the pixels that the job says: a mark is a place among them.
 * @throws ServiceError when it has others
 */
export function mustHaveSize(page: PagePart, found: PixelSize, said: PixelSize): void {
  if (!hasSize(found, said)) throw new ServiceError(otherSize(page, found, said))
}
