import { pyramidLevels, TILE } from '../../../../contract/picture-pyramid.ts'
import type { PyramidLevel } from '../../../../contract/pictures.ts'
import type { PixelSize } from '../../scans/page/pixel-size.ts'

/** The place of a tile in the pyramid. */
export interface TilePlace {
  level: number
  column: number
  row: number
}

/** Tiles of one level side by side: columns `from` to `to` and rows likewise, the last ones not among them. */
export interface Block {
  level: number
  columns: readonly [from: number, to: number]
  rows: readonly [from: number, to: number]
}

/** Pixels of the page. */
export interface PageArea extends PixelSize {
  left: number
  top: number
}

/** Of finer levels so many tiles more are made at each side: the reading down to there is what takes long. */
const ROUND: readonly { columns: number; rows: number }[] = [
  { columns: 2, rows: 1 },
  { columns: 1, rows: 1 },
]

/** A tile with its neighbours: two each way at least, where there are two, so that the block has the tile's level. */
export function blockAbout({ level, column, row }: TilePlace, { columns, rows }: PyramidLevel): Block {
  const round = ROUND[level] ?? { columns: 0, rows: 0 }
  return { level, columns: about(column, round.columns, columns), rows: about(row, round.rows, rows) }
}

function about(at: number, round: number, of: number): [number, number] {
  const from = Math.max(0, at - round)
  const to = Math.min(of, at + round + 1)
  if (to - from >= 2) return [from, to]
  return to < of ? [from, to + 1] : [Math.max(0, from - 1), to]
}

/** Whether a tile is one of a block, or one of the finer ones that lie within it. */
export function liesIn({ level, column, row }: TilePlace, block: Block): boolean {
  const finer = 2 ** (block.level - level)
  const within = ([from, to]: readonly [number, number], at: number): boolean =>
    at >= from * finer && at < to * finer
  return level <= block.level && within(block.columns, column) && within(block.rows, row)
}

/** The part of a page that a block shows. */
export function areaOf({ level, columns, rows }: Block, page: PixelSize): PageArea {
  const side = TILE * 2 ** level
  const [left, top] = [columns[0] * side, rows[0] * side]
  return {
    left,
    top,
    width: Math.min(page.width, columns[1] * side) - left,
    height: Math.min(page.height, rows[1] * side) - top,
  }
}

/** How many levels a block has when it is cut as if it were a page. */
export const levelsOfBlock = ({ width, height }: PageArea): number => pyramidLevels(width, height).length
