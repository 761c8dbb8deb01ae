import { TILE } from '../../contract/picture-pyramid.ts'
import type { PyramidLevel, SheetPictures } from '../../contract/pictures.ts'
import { type Pixel, pixel, screen } from '../../core/geometry/frames.ts'
import {
  applied,
  type BoxSize,
  type Camera,
  type Extent,
  extent,
  matrixOf,
  toPixel,
} from '../camera/camera.ts'

/** One tile of a pyramid. */
export interface Tile {
  level: number
  column: number
  row: number
}

/** A level may be enlarged by this before the next finer one is taken: hardly seen, and far fewer tiles. */
const ENLARGED = 1.15

/**
 * The level to show: the coarsest that has a pixel for each pixel of the screen.
 * @param zoom device pixels of the screen for each pixel of the scan
 * @param levels from the scan as it is to the coarsest
 */
export function levelFor(zoom: number, levels: readonly PyramidLevel[]): number {
  const level = Math.floor(Math.log2(ENLARGED / zoom))
  return Math.min(Math.max(0, level), levels.length - 1)
}

/**
 * How many pixels of the scan a pixel of a level stands for, across and down. Each level halves the one before; where
 * that has an odd number of pixels, the last one of the level reaches beyond the edge of the sheet.
 */
export const levelStep = ({ level }: PyramidLevel): number => 2 ** level

/** What a tile covers, in pixels of the scan. */
export function tileExtent({ column, row }: Tile, of: PyramidLevel): Extent {
  const step = levelStep(of)
  return {
    left: column * TILE * step,
    top: row * TILE * step,
    right: Math.min(of.width, (column + 1) * TILE) * step,
    bottom: Math.min(of.height, (row + 1) * TILE) * step,
  }
}

export const corners = ({ left, top, right, bottom }: Extent): [Pixel, Pixel, Pixel, Pixel] => [
  pixel(left, top),
  pixel(right, top),
  pixel(right, bottom),
  pixel(left, bottom),
]

/** What can be seen of a sheet: the upright box in pixels of the scan round what may be turned on the screen. */
export const extentInSight = (camera: Camera, box: BoxSize): Extent =>
  extent(
    [screen(0, 0), screen(box.width, 0), screen(box.width, box.height), screen(0, box.height)].map((corner) =>
      toPixel(camera, box, corner),
    ),
  )

/**
 * The tiles of a level that are in sight, nearest to the middle of the box first.
 * @param ring also those that reach so near to the box on any side, in tiles; parts of one count
 */
export function tilesInSight(camera: Camera, box: BoxSize, of: PyramidLevel, ring = 0): Tile[] {
  const seen = extentInSight(camera, box)
  const size = TILE * levelStep(of)
  const first = (from: number): number => Math.max(0, Math.floor(from / size - ring))
  const last = (to: number, count: number): number => Math.min(count - 1, Math.ceil(to / size + ring) - 1)
  const matrix = matrixOf(camera, box)
  const border = ring * size * camera.zoom
  const found: { tile: Tile; far: number }[] = []
  for (let row = first(seen.top); row <= last(seen.bottom, of.rows); row++) {
    for (let column = first(seen.left); column <= last(seen.right, of.columns); column++) {
      const tile = { level: of.level, column, row }
      const on = extent(corners(tileExtent(tile, of)).map((p) => applied(matrix, p)))
      if (on.right <= -border || on.bottom <= -border) continue
      if (on.left >= box.width + border || on.top >= box.height + border) continue
      const far = Math.hypot((on.left + on.right - box.width) / 2, (on.top + on.bottom - box.height) / 2)
      found.push({ tile, far })
    }
  }
  return found.sort((a, b) => a.far - b.far).map(({ tile }) => tile)
}

/** The tiles of a level that a box of pixels lies on. */
export function tilesOver(box: Extent, level: number, pictures: SheetPictures): Tile[] {
  const of = pictures.levels[level]
  if (of === undefined) return []
  const size = TILE * levelStep(of)
  const first = (from: number): number => Math.max(0, Math.floor(from / size))
  const last = (to: number, count: number): number => Math.min(count - 1, Math.ceil(to / size) - 1)
  const tiles: Tile[] = []
  for (let row = first(box.top); row <= last(box.bottom, of.rows); row++) {
    for (let column = first(box.left); column <= last(box.right, of.columns); column++) {
      tiles.push({ level, column, row })
    }
  }
  return tiles
}

/** The tile of a coarser level that covers this one, whole. */
export const coarser = ({ level, column, row }: Tile, by: number): Tile => ({
  level: level + by,
  column: column >> by,
  row: row >> by,
})
