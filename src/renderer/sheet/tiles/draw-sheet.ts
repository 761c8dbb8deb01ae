import { type PyramidLevel, pictureAddress, type SheetPictures } from '../../../contract/pictures.ts'
import type { Aids } from '../aids.ts'
import { type Camera, type Extent, matrixOf, type Size } from '../camera.ts'
import type { Picture, PictureCache } from './picture-cache.ts'
import { coarser, levelFor, levelStep, type Tile, tileExtent, tilesInSight } from './wanted-tiles.ts'

/** Above this many screen pixels for a pixel of the scan, the pixels are shown as the squares they are. */
const SQUARES_FROM = 3
/** Of the pictures that are kept, what is in sight may take so much; else the next coarser level is shown. */
const SHARE_IN_SIGHT = 0.7
/** With what may be wanted next: less than all, or what comes would drive out what came before it, for ever. */
const SHARE_WITH_RING = 0.85
const TILE_BYTES = 4 * 512 * 512
/** How far a picture reaches under its neighbours, device pixels. */
const SEAM = 0.6

/** What a frame shows of a sheet. */
export interface SheetFrame {
  pictures: SheetPictures
  camera: Camera
  box: Size
  /** Device pixels for each CSS pixel. */
  density: number
}

export const overviewAddress = ({ sheet, version }: SheetPictures): string =>
  pictureAddress({ sheet, version, kind: 'overview' })

export const groundAddress = ({ sheet, version }: SheetPictures): string =>
  pictureAddress({ sheet, version, kind: 'ground' })

export const tileAddress = ({ sheet, version }: SheetPictures, tile: Tile): string =>
  pictureAddress({ sheet, version, kind: 'tile', ...tile })

/** The level a frame is shown from; null until its tiles are made. */
export function levelOf({ pictures, camera, box, density }: SheetFrame, cacheBytes: number) {
  if (pictures.progress.state !== 'ready') return null
  const finest = levelFor(camera.zoom * density, pictures.levels)
  for (const of of pictures.levels.slice(finest)) {
    if (tilesInSight(camera, box, of).length * TILE_BYTES <= SHARE_IN_SIGHT * cacheBytes) return of
  }
  return pictures.levels.at(-1) ?? null
}

/** How many tiles round those in sight may be fetched ahead. */
export const ringRoom = (inSight: number, cacheBytes: number): number =>
  Math.max(0, Math.floor((SHARE_WITH_RING * cacheBytes) / TILE_BYTES) - inSight)

interface Placed {
  picture: CanvasImageSource & Picture
  on: Extent
}

/**
 * Draws what there is of a sheet: coarse under fine, so that nothing is ever blank that was seen before.
 * @param moving whether the sheet is on its way: its pictures may then lie half a device pixel off
 */
export function drawSheet(
  context: CanvasRenderingContext2D,
  frame: SheetFrame,
  level: PyramidLevel | null,
  cache: PictureCache<ImageBitmap>,
  moving: boolean,
): void {
  const { pictures, camera, box } = frame
  const fine: Placed[] = []
  const under = new Map<string, Placed & { level: number }>()
  let missing = level === null
  for (const tile of level === null ? [] : tilesInSight(camera, box, level)) {
    const picture = cache.get(tileAddress(pictures, tile))
    if (picture !== undefined && level !== null) {
      fine.push({ picture, on: tileExtent(tile, level) })
      continue
    }
    missing = true
    for (const of of pictures.levels.slice(tile.level + 1)) {
      const parent = coarser(tile, of.level - tile.level)
      const address = tileAddress(pictures, parent)
      const found = cache.get(address)
      if (found === undefined) continue
      under.set(address, { picture: found, on: tileExtent(parent, of), level: of.level })
      break
    }
  }
  const overview = cache.get(overviewAddress(pictures))
  const whole = { left: 0, top: 0, right: pictures.width, bottom: pictures.height }
  const placed: Placed[] = [
    ...(missing && overview !== undefined ? [{ picture: overview, on: whole }] : []),
    ...[...under.values()].sort((a, b) => b.level - a.level),
    ...fine,
  ]
  if (moving && camera.turn === 0 && !camera.mirror) placeOnWholePixels(context, frame, placed)
  else place(context, frame, placed, level)
}

/** Pictures that end on whole device pixels need no sealing, which is most of the drawing. */
function placeOnWholePixels(
  context: CanvasRenderingContext2D,
  { camera, box, density }: SheetFrame,
  placed: readonly Placed[],
): void {
  const [scale, , , , e, f] = matrixOf(camera, box)
  const x = (pixel: number): number => Math.round(density * (scale * pixel + e))
  const y = (pixel: number): number => Math.round(density * (scale * pixel + f))
  context.setTransform(1, 0, 0, 1, 0, 0)
  context.imageSmoothingEnabled = camera.zoom <= SQUARES_FROM
  context.imageSmoothingQuality = 'low'
  for (const { picture, on } of placed) {
    const [left, top] = [x(on.left), y(on.top)]
    context.drawImage(picture, left, top, x(on.right) - left, y(on.bottom) - top)
  }
}

function place(
  context: CanvasRenderingContext2D,
  { camera, box, density }: SheetFrame,
  placed: readonly Placed[],
  level: PyramidLevel | null,
): void {
  const upright = camera.turn === 0 && !camera.mirror
  const step = level === null ? 0 : levelStep(level)
  const oneToOne = upright && Math.abs(camera.zoom * density * step - 1) < 1e-6
  setScanTransform(context, camera, box, density)
  context.imageSmoothingEnabled = camera.zoom <= SQUARES_FROM
  context.imageSmoothingQuality = level === null ? 'medium' : 'low'
  if (!oneToOne) for (const one of placed) seal(context, one, SEAM / (camera.zoom * density))
  for (const { picture, on } of placed) {
    context.drawImage(picture, on.left, on.top, on.right - on.left, on.bottom - on.top)
  }
}

/**
 * Draws the last column and row of a picture a little over its edge, under the neighbours that come after: no hairline
 * shows between them, and each picture lies exactly where it belongs.
 * @param over pixels of the scan
 */
function seal(context: CanvasRenderingContext2D, { picture, on }: Placed, over: number): void {
  const { width, height } = picture
  const [wide, high] = [on.right - on.left, on.bottom - on.top]
  context.drawImage(picture, width - 1, 0, 1, height, on.right - over, on.top, 2 * over, high)
  context.drawImage(picture, 0, height - 1, width, 1, on.left, on.bottom - over, wide, 2 * over)
}

/** Makes the context's unit the pixel of the scan: exactly where picks and what is drawn over it have it. */
export function setScanTransform(
  context: CanvasRenderingContext2D,
  camera: Camera,
  box: Size,
  density: number,
): void {
  const [a, b, c, d, e, f] = matrixOf(camera, box)
  context.setTransform(a * density, b * density, c * density, d * density, e * density, f * density)
}

/** Whether the sheet as it is shown is light on dark. */
export const isShownDark = (darkScan: boolean, { negative }: Aids): boolean => darkScan !== negative
