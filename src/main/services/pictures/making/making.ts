import type { ServiceReason } from '../../words/services-words.ts'
import type { Manifest } from '../cache/manifest.ts'
import type { TileKind } from '../layout/tile-kind.ts'
import type { PageInFile } from '../pyramid/open-page.ts'
import type { DrawnPage } from './drawn-page.ts'
import type { Page } from './page.ts'

/** How the tiles of a page are kept, and what makes them. */
export interface Looked {
  kind: TileKind
  tool: string
}

/** The pictures of the whole that were made in the life of this process, and need no making again. */
export interface Whole extends Looked {
  /** Milliseconds that it took. */
  took: number
}

/** What happens while the pictures of a page are made, in this order. folder: where they are */
export type MakingEvent =
  | { is: 'begun' }
  /** The page is being drawn, which takes a while. */
  | { is: 'drawing'; doing: ServiceReason }
  /** It is known how the tiles are kept. */
  | { is: 'looked'; kind: TileKind }
  /** The page is cut into tiles, here; null: no longer. Begins before the pictures of the whole are there. */
  | { is: 'cutting'; into: string | null }
  /** So many tiles are cut. */
  | { is: 'cut'; tiles: number }
  /** The picture of the whole is there. */
  | { is: 'overview'; folder: string }
  /** Those made of it are there as well: from now on tiles of the page in `file` can be asked for. */
  | { is: 'whole'; folder: string; file: PageInFile; whole: Whole }
  /** All pictures are there. */
  | { is: 'ready'; folder: string; manifest: Manifest }

/** One making of the pictures of a page, which others hear of as it goes on. */
export interface PageMaking {
  page: Page
  /** Where the pictures come. */
  folder: string
  drawn: DrawnPage
  /** What is there already. */
  whole: Whole | undefined
  signal: AbortSignal
  tell: (event: MakingEvent) => void
}
