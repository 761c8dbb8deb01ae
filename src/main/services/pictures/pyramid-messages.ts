import type { TilesWanted } from './cut-tiles.ts'

/** What the process that cuts tiles is told, once. */
export type ToPyramid = TilesWanted

/** What it tells. */
export type FromPyramid =
  | { kind: 'tiles'; tiles: number }
  | { kind: 'done' }
  | { kind: 'failed'; because: string }
