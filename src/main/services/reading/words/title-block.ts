import type { PageArea } from '../../pictures/layout/block.ts'
import type { PixelSize } from '../../scans/page/pixel-size.ts'

/** The part of a sheet, from its lower right corner, that holds its title block. Common practice, no source. */
const ACROSS = 0.5
const DOWN = 0.4

/** Pixels in which the words of a title block are read well, and within seconds. */
const PIXELS = 4_000_000

/** Where the title block of a page is looked for, and how often the sides of the page are halved for that. */
export function titleBlockOf(page: PixelSize): { area: PageArea; level: number } {
  const pixels = page.width * ACROSS * page.height * DOWN
  const level = Math.max(0, Math.ceil(Math.log2(pixels / PIXELS) / 2))
  const [across, down] = [Math.ceil(page.width / 2 ** level), Math.ceil(page.height / 2 ** level)]
  const [width, height] = [Math.ceil(across * ACROSS), Math.ceil(down * DOWN)]
  return { area: { left: across - width, top: down - height, width, height }, level }
}
