import type { Radians } from '../../core/geometry/angle-units.ts'
import {
  type Pixel,
  type Point,
  type PointsOf,
  pixel,
  type Screen,
  screen,
  type Vector,
  vectorLike,
} from '../../core/geometry/frames.ts'

/** Where a sheet is looked at from. A pixel of the scan stays a pixel of the scan whatever is set here. */
export interface Camera {
  /** The pixel of the scan in the middle of the box. */
  centre: Pixel
  /** Screen pixels (CSS) for each pixel of the scan. */
  zoom: number
  /** Clockwise as seen. */
  turn: Radians
  /** Left for right, before it is turned. */
  mirror: boolean
}

/** CSS pixels. */
export interface BoxSize {
  width: number
  height: number
}

/** Affine, as a canvas takes it: x' = a x + c y + e, y' = b x + d y + f. */
export type CameraMatrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number]

/** Free border round what is fitted into the box, CSS pixels. */
const MARGIN = 24
/** Largest enlargement: one pixel of the scan as a square of this many pixels of the screen. */
const CLOSEST = 64
/** A sheet may be looked at as small as this share of the size that fits the box. */
const FARTHEST = 0.5

/** From pixels of the scan to the screen. */
export function matrixOf(camera: Camera, box: BoxSize): CameraMatrix {
  const { zoom, turn, centre } = camera
  const [cos, sin] = [zoom * Math.cos(turn), zoom * Math.sin(turn)]
  const m = camera.mirror ? -1 : 1
  const [a, b, c, d] = [cos * m, sin * m, -sin, cos]
  const [x, y] = centre
  return [a, b, c, d, box.width / 2 - a * x - c * y, box.height / 2 - b * x - d * y]
}

export const applied = ([a, b, c, d, e, f]: CameraMatrix, [x, y]: Pixel): Screen =>
  screen(a * x + c * y + e, b * x + d * y + f)

export const toScreen = (camera: Camera, box: BoxSize, place: Pixel): Screen =>
  applied(matrixOf(camera, box), place)

/** Which pixel of the scan lies under a place on the screen; fractions are kept. */
export function toPixel(camera: Camera, box: BoxSize, [x, y]: Screen): Pixel {
  const [dx, dy] = alongScan(camera, x - box.width / 2, y - box.height / 2)
  return pixel(camera.centre[0] + dx, camera.centre[1] + dy)
}

/** What a way on the screen is in pixels of the scan. */
export function alongScan({ centre, zoom, turn, mirror }: Camera, x: number, y: number): Vector<Pixel> {
  const [cos, sin] = [Math.cos(turn) / zoom, Math.sin(turn) / zoom]
  return vectorLike(centre, (cos * x + sin * y) * (mirror ? -1 : 1), -sin * x + cos * y)
}

/** Moved so that what is seen goes by so much on the screen. */
export function movedBy(camera: Camera, x: number, y: number): Camera {
  const [dx, dy] = alongScan(camera, x, y)
  return { ...camera, centre: pixel(camera.centre[0] - dx, camera.centre[1] - dy) }
}

/** Zoomed by a factor with the pixel under `at` staying there, within the limits for a sheet of this size. */
export function zoomedAbout(
  camera: Camera,
  box: BoxSize,
  sheet: BoxSize,
  at: Screen,
  factor: number,
): Camera {
  const zoom = withinLimits(camera.zoom * factor, camera, box, sheet)
  const [x, y] = [at[0] - box.width / 2, at[1] - box.height / 2]
  const under = toPixel(camera, box, at)
  const [dx, dy] = alongScan({ ...camera, zoom }, x, y)
  return { ...camera, zoom, centre: pixel(under[0] - dx, under[1] - dy) }
}

const withinLimits = (zoom: number, camera: Camera, box: BoxSize, sheet: BoxSize): number =>
  Math.min(CLOSEST, Math.max(zoom, FARTHEST * wholeSheet(camera, box, sheet).zoom))

/** With all of the sheet in sight. */
export const wholeSheet = (camera: Camera, box: BoxSize, sheet: BoxSize): Camera =>
  fitted(
    camera,
    box,
    [pixel(0, 0), pixel(sheet.width, 0), pixel(sheet.width, sheet.height), pixel(0, sheet.height)],
    CLOSEST,
  )

/**
 * With all of these pixels in sight, and as large as they can be.
 * @param closest not enlarged beyond this
 */
export function fitted(camera: Camera, box: BoxSize, pixels: readonly Pixel[], closest: number): Camera {
  const plain = { ...camera, zoom: 1, centre: pixel(0, 0) }
  const { left, top, right, bottom } = extent(pixels.map((p) => toScreen(plain, { width: 0, height: 0 }, p)))
  const room = (length: number): number => Math.max(1, length - 2 * MARGIN)
  const zoom = Math.min(
    closest,
    room(box.width) / Math.max(1e-9, right - left),
    room(box.height) / Math.max(1e-9, bottom - top),
  )
  const [x, y] = alongScan(plain, (left + right) / 2, (top + bottom) / 2)
  return { ...camera, zoom, centre: pixel(x, y) }
}

/** With the middle of the box on the sheet, so that the sheet is never lost from sight. */
export function onTheSheet(camera: Camera, sheet: BoxSize): Camera {
  const [x, y] = camera.centre
  return {
    ...camera,
    centre: pixel(Math.min(sheet.width, Math.max(0, x)), Math.min(sheet.height, Math.max(0, y))),
  }
}

/**
 * Moved by less than a pixel of the screen, so that pixels of a scan that is shown one to one fall on whole ones and
 * stay sharp.
 * @param density pixels of the screen for each CSS pixel
 */
export function onWholePixels(camera: Camera, box: BoxSize, density: number): Camera {
  const [x, y] = toScreen(camera, box, pixel(0, 0))
  const off = (at: number): number => (Math.round(at * density) - at * density) / density
  return movedBy(camera, off(x), off(y))
}

export interface Extent {
  left: number
  top: number
  right: number
  bottom: number
}

/** The upright box round some points. */
export function extent<P extends Point>(points: PointsOf<P>): Extent {
  const box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity }
  for (const [x, y] of points) {
    box.left = Math.min(box.left, x)
    box.right = Math.max(box.right, x)
    box.top = Math.min(box.top, y)
    box.bottom = Math.max(box.bottom, y)
  }
  return box
}

/** Whether all of these pixels are in the box, so far from its edge at least. */
export function inSight(camera: Camera, box: BoxSize, pixels: readonly Pixel[], border: number): boolean {
  const matrix = matrixOf(camera, box)
  return pixels.every((place) => {
    const [x, y] = applied(matrix, place)
    return x >= border && y >= border && x <= box.width - border && y <= box.height - border
  })
}
