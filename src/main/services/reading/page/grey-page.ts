import type { GreyWindow } from '../../../../core/imaging/index.ts'
import type { PageArea } from '../../pictures/layout/block.ts'

/** The greys of a page, a part at a time. */
export interface GreyPage {
  /**
   * A part at full size, or as it is with each side halved so many times.
   * @param area pixels of the page at that level, all of it on the page
   * @param level 0: full size
   */
  greys(area: PageArea, level: number): Promise<GreyWindow>
}
