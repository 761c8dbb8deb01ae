import { TILE } from '../../contract/picture-pyramid.ts'
import type { PyramidLevel, SheetPictures } from '../../contract/pictures.ts'
import type { BoxSize, Camera } from '../camera/camera.ts'
import { levelFor, levelStep, type Tile, tilesInSight } from './wanted-tiles.ts'

/** Above this many screen pixels for a pixel of the scan, the pixels are shown as the squares they are. */
const SQUARES_FROM = 3
/** Of the pictures that are kept, what is in sight may take so much; else the next coarser level is shown. */
const SHARE_IN_SIGHT = 0.7
/** With what may be wanted next: less than all, or what comes would drive out what came before it, for ever. */
const SHARE_WITH_RING = 0.85
const TILE_BYTES = 4 * TILE * TILE

/**
 * So far beyond what is in sight pictures are fetched ahead and laid out, tiles. A hand that drags fast is a fifth of a second
 * away from there. A whole tile takes half as much memory again: the browser decodes and draws all that is laid out.
 */
const AROUND = 0.5

/** What a frame shows of a sheet. */
export interface SheetFrame {
  pictures: SheetPictures
  camera: Camera
  box: BoxSize
  /** Device pixels for each CSS pixel. */
  density: number
}

/** Whether tiles can be had: they are made, or are being made and are made out of turn for whoever asks. */
export const mayHaveTiles = ({ progress }: SheetPictures): boolean =>
  progress.locked !== true && ['tiles', 'ready'].includes(progress.state)

/** What is to be seen of a sheet: a level, its tiles that are in sight, and how its pixels are drawn. */
export interface LevelInSight {
  of: PyramidLevel
  /** Nearest to the middle of the box first. */
  tiles: readonly Tile[]
  /** Those, and what is so near that it may be in sight next. */
  around: readonly Tile[]
  /** As `squaresFor` has it. */
  squares: number
  /** Whether its pixels are seen as squares, or run smoothly into one another. */
  sharp: boolean
}

/** What a frame is to show; null until tiles can be had. */
export function levelInSight(
  { pictures, camera, box, density }: SheetFrame,
  cacheBytes: number,
): LevelInSight | null {
  if (!mayHaveTiles(pictures)) return null
  const zoom = camera.zoom * density
  const sharp = zoom > SQUARES_FROM
  const levels = pictures.levels.slice(levelFor(zoom, pictures.levels))
  for (const [i, of] of levels.entries()) {
    const tiles = tilesInSight(camera, box, of)
    const fits = tiles.length * TILE_BYTES <= SHARE_IN_SIGHT * cacheBytes
    if (fits || i === levels.length - 1)
      return {
        of,
        tiles,
        around: tilesInSight(camera, box, of, AROUND),
        squares: squaresFor(zoom * levelStep(of)),
        sharp,
      }
  }
  return null
}

/** Tells two sights apart that take other tiles, or take them in another scale. */
export function nameOfLevel(sight: LevelInSight | null): string {
  if (sight === null) return ''
  const { of, tiles, around, squares, sharp } = sight
  const places = (some: readonly Tile[]): string =>
    some
      .map(({ column, row }) => row * of.columns + column)
      .sort((a, b) => a - b)
      .join(' ')
  return `${of.level} ${squares} ${sharp} ${places(tiles)} about ${places(around)}`
}

/** How many tiles round those in sight may be fetched ahead. */
export const ringRoom = (inSight: number, cacheBytes: number): number =>
  Math.max(0, Math.floor((SHARE_WITH_RING * cacheBytes) / TILE_BYTES) - inSight)

/**
 * How many device pixels across each pixel of a level is drawn, before the compositor brings it to the zoom: a power of
 * two, and never less than the zoom. A browser that has to enlarge a layer draws it anew at that very size instead, where
 * tiles do not end on whole pixels, and the ground shows between them.
 * @param zoom device pixels of the screen for each pixel of the level
 */
export const squaresFor = (zoom: number): number => 2 ** Math.max(0, Math.ceil(Math.log2(zoom) - 1e-6))
