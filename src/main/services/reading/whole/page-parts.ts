import type { PixelSize } from '../../scans/page/pixel-size.ts'
import type { Rows } from '../process/figure-protocol.ts'

/** Pixels to the inch at which lettering is still found: digits of an eighth of an inch are 19 pixels high. Common practice, no source. */
const ENOUGH = 150
/** Of a page that does not say how fine it is: pixels in which a whole drawing sheet is seen. */
const PIXELS = 26_000_000
/** Pixels of a part that is looked at in one go, so that its figures come soon and it takes little memory. */
const PART = 4_000_000

/** How a page is gone through to find its figures. */
export interface PageParts {
  /** It is looked at with its sides halved so many times. */
  level: number
  /** Rows at that level, from above to below. */
  rows: readonly Rows[]
}

/** @param dpi pixels to the inch, where that is known */
export function partsOf({ width, height }: PixelSize, dpi: number | undefined): PageParts {
  const fine =
    dpi === undefined
      ? Math.ceil(Math.log2((width * height) / PIXELS) / 2)
      : Math.floor(Math.log2(dpi / ENOUGH))
  const level = Math.max(0, fine)
  const [across, down] = [Math.ceil(width / 2 ** level), Math.ceil(height / 2 ** level)]
  const parts = Math.max(1, Math.ceil((across * down) / PART))
  const rows = Array.from({ length: parts }, (_, i) => ({
    from: Math.round((i * down) / parts),
    to: Math.round(((i + 1) * down) / parts),
  }))
  return { level, rows }
}
