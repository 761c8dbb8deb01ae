import { type Pixel, type Screen, screen } from '../../core/geometry/frames.ts'
import { useBench } from '../bench/bench-store.ts'
import {
  type BoxSize,
  type Camera,
  extent,
  fitted,
  inSight,
  movedBy,
  onTheSheet,
  onWholePixels,
  toScreen,
  wholeSheet,
  zoomedAbout,
} from './camera.ts'
import { cameraOf, cameras, setCamera } from './camera-store.ts'
import { glideTo } from './glide.ts'

/** Border within which something counts as in sight, CSS pixels. */
const BORDER = 40
/** What is brought into sight is not enlarged beyond this. */
const CLOSE_ENOUGH = 2
const STEP = 1.4

interface OnTheBench {
  sheet: string
  size: BoxSize
  box: BoxSize
  camera: Camera
}

/** The sheet on the bench and where it is looked at from; undefined while nothing can be shown. */
export function onTheBench(): OnTheBench | undefined {
  const { sheet, opened } = useBench.getState()
  const scan = opened?.job.sheets.find(({ id }) => id === sheet)?.scan
  const camera = cameraOf(sheet)
  const { box } = cameras.getState()
  if (sheet === null || scan === undefined || camera === undefined || box.width === 0) return undefined
  return { sheet, size: scan, box, camera }
}

/** Moves what is seen by so much on the screen. */
export function pan(x: number, y: number): void {
  const here = onTheBench()
  if (here !== undefined) setCamera(here.sheet, onTheSheet(movedBy(here.camera, x, y), here.size))
}

export function zoomAt(at: Screen, factor: number): void {
  const here = onTheBench()
  if (here === undefined) return
  const camera = zoomedAbout(here.camera, here.box, here.size, at, factor)
  setCamera(here.sheet, onTheSheet(camera, here.size))
}

const middleOf = ({ width, height }: BoxSize): Screen => screen(width / 2, height / 2)

export const zoomIn = (): void => zoomAt(middleOf(cameras.getState().box), STEP)
export const zoomOut = (): void => zoomAt(middleOf(cameras.getState().box), 1 / STEP)

export function showWholeSheet(): void {
  const here = onTheBench()
  if (here !== undefined) setCamera(here.sheet, wholeSheet(here.camera, here.box, here.size))
}

/** One pixel of the scan for each pixel of the screen's own. */
export function showActualPixels(): void {
  const here = onTheBench()
  if (here === undefined) return
  const density = window.devicePixelRatio || 1
  const factor = 1 / density / here.camera.zoom
  const camera = zoomedAbout(here.camera, here.box, here.size, middleOf(here.box), factor)
  setCamera(here.sheet, onWholePixels(camera, here.box, density))
}

/** Where the sheet was looked at from before it was looked at closer. */
const before = new Map<string, Camera>()

/** A zoom that was reckoned to be 1 may be less by a rounding. */
const AS_LARGE = 1 - 1e-6

/**
 * Looks at a place of the sheet as large as the scan has it, one pixel for each CSS pixel at the least; where it is so
 * large already, goes back to where it was looked at from before, or else shows the whole sheet.
 */
export function lookCloser(place: Pixel | null): void {
  const here = onTheBench()
  if (here === undefined || place === null) return
  const { camera, box, size, sheet } = here
  if (camera.zoom < AS_LARGE) {
    before.set(sheet, camera)
    // What was under the pointer stays under it.
    setCamera(
      sheet,
      onTheSheet(zoomedAbout(camera, box, size, toScreen(camera, box, place), 1 / camera.zoom), size),
    )
    return
  }
  setCamera(sheet, before.get(sheet) ?? wholeSheet(camera, box, size))
  before.delete(sheet)
}

/**
 * Brings pixels into sight where they are not: glides there, or jumps where no motion is wanted.
 * @param least CSS pixels that they are to reach across at the least, the lesser way: what is smaller is gone nearer to
 */
export function bringInSight(pixels: readonly Pixel[], least = 0): void {
  const here = onTheBench()
  if (here === undefined || pixels.length === 0) return
  const large = least === 0 ? here.camera.zoom : Math.min(CLOSE_ENOUGH, least / acrossOf(pixels))
  if (here.camera.zoom >= large && inSight(here.camera, here.box, pixels, BORDER)) return
  const nearer = Math.max(here.camera.zoom, large)
  const closest = Math.min(CLOSE_ENOUGH, fitsAt(here, pixels) ? nearer : Infinity)
  glideTo(here.sheet, fitted(here.camera, here.box, pixels, closest))
}

/** How far pixels reach the lesser way. */
function acrossOf(pixels: readonly Pixel[]): number {
  const { left, top, right, bottom } = extent(pixels)
  return Math.max(1, Math.min(right - left, bottom - top))
}

/** Whether the pixels would be in sight without another zoom. */
function fitsAt({ camera, box }: OnTheBench, pixels: readonly Pixel[]): boolean {
  const { centre } = fitted(camera, box, pixels, camera.zoom)
  return inSight({ ...camera, centre }, box, pixels, BORDER / 2)
}

/** Moves the sheet just as far as is needed to see a pixel, at once. */
export function keepInSight(pixel: Pixel): void {
  const here = onTheBench()
  if (here === undefined || inSight(here.camera, here.box, [pixel], BORDER)) return
  setCamera(here.sheet, { ...here.camera, centre: pixel })
}
