import type { TileKind } from '../../pictures/layout/tile-kind.ts'
import type { PageInFile } from '../../pictures/pyramid/open-page.ts'
import type { PixelSize } from '../../scans/page/pixel-size.ts'

/** Where the pixels of a page come from. */
export interface PageSource {
  /** Of the page. */
  size: PixelSize
  from: /** Its tiles, in folders named after their level. type: how they are kept */
    | { is: 'tiles'; folder: string; type: TileKind['type'] }
    /** The scan itself, or what was drawn of it. */
    | { is: 'file'; file: PageInFile }
}
