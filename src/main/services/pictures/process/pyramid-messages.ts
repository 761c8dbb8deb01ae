import type { PixelSize } from '../../scans/page/pixel-size.ts'
import type { TileKind } from '../layout/tile-kind.ts'
import type { BlockWanted, TilesWanted } from '../pyramid/cut-tiles.ts'
import type { WholeWanted } from '../pyramid/make-whole.ts'

/** What the process that makes pictures is told, once. memory: the most bytes that it may use. */
export type ToPyramid = { memory: number } & (
  | { make: 'whole'; wanted: Omit<WholeWanted, 'kind'> }
  | { make: 'tiles'; wanted: TilesWanted }
  | { make: 'block'; wanted: BlockWanted }
)

/** What it tells. */
export type FromPyramid =
  /** How the tiles of the page are to be kept, its pixels, and what makes them; before a picture of the whole. */
  | { kind: 'page'; page: TileKind; size: PixelSize; tool: string }
  /** The picture of the whole is there; what is made of it follows. */
  | { kind: 'overview' }
  | { kind: 'tiles'; tiles: number }
  /** The tiles of a block, below its folder. */
  | { kind: 'block'; files: string[] }
  | { kind: 'done' }
  | { kind: 'failed'; because: string }
