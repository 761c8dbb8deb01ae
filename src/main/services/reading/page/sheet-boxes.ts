import type { BoxToRead } from '../../../../core/reading/box/box-to-read.ts'
import type { AnyReason } from '../../../../core/words/reason.ts'
import type { PixelSize } from '../../scans/page/pixel-size.ts'
import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'

/** A digit has some strokes, and none is seen in fewer pixels. Common practice, no source. */
const LEAST = 4
/** Four inches at 1,200 pixels to the inch: no figure is longer. Common practice, no source. */
const MOST = 4800

/**
 * Sees that there can be a figure in a box.
 * @param page its size
 * @throws ServiceError when there can't: it lies off the page, or is far too small or large
 */
export function mustHoldFigure(box: BoxToRead, page: PixelSize): void {
  const because = whyNone(box, page)
  if (because !== undefined) throw new ServiceError(because)
}

/** Whether there can be a figure in a box of a page. */
export const canHoldFigure = (box: BoxToRead, page: PixelSize): boolean => whyNone(box, page) === undefined

function whyNone({ x, y, width, height }: BoxToRead, page: PixelSize): AnyReason | undefined {
  if (width < LEAST || height < LEAST) return reason('figures.box-too-small', { least: LEAST })
  if (width > MOST || height > MOST) return reason('figures.box-too-large', { most: MOST })
  const [middle, down] = [x + width / 2, y + height / 2]
  if (middle < 0 || down < 0 || middle > page.width || down > page.height)
    return reason('figures.box-outside', { width: page.width, height: page.height })
  return undefined
}
