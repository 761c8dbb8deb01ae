import type { Pixel } from '../../core/geometry/frames.ts'
import type { Camera, Extent } from '../camera/camera.ts'
import { luminance } from '../tiles/luminance.ts'

/** Pixels of the scan across the lens. */
export const LENS_PIXELS = 21
/** CSS pixels of the screen for each pixel of the scan. */
export const LENS_ZOOM = 8

type Context = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D

/** The quarter turn and mirror that the lens is held in: nearest to how the sheet is looked at, rows still level. */
export function lensTurn({ turn, mirror }: Camera): { quarters: number; mirror: boolean } {
  return { quarters: ((Math.round(turn / (Math.PI / 2)) % 4) + 4) % 4, mirror }
}

/** What the lens shows round a pixel. */
export function lensExtent([x, y]: Pixel): Extent {
  const half = LENS_PIXELS / 2 + 1
  return { left: x - half, top: y - half, right: x + half, bottom: y + half }
}

/** Greys along the row and the column of the lens through its middle, 0 to 255, and how far that pixel is off centre. */
export interface Profiles {
  row: number[]
  column: number[]
  /** Where the middle of the lens lies within its pixel, 0 to 1, along the row and the column as they are shown. */
  within: [number, number]
}

let sampler: OffscreenCanvasRenderingContext2D | null = null

export function profilesAt(
  pixel: Pixel,
  hold: { quarters: number; mirror: boolean },
  draw: (context: Context) => void,
): Profiles | null {
  const half = (LENS_PIXELS - 1) / 2
  sampler ??= new OffscreenCanvas(LENS_PIXELS, LENS_PIXELS).getContext('2d', { willReadFrequently: true })
  if (sampler === null) return null
  const [px, py] = [Math.floor(pixel[0]), Math.floor(pixel[1])]
  sampler.setTransform(1, 0, 0, 1, 0, 0)
  sampler.clearRect(0, 0, LENS_PIXELS, LENS_PIXELS)
  sampler.imageSmoothingEnabled = false
  turnAboutMiddle(sampler, hold, LENS_PIXELS)
  sampler.translate(half - px, half - py)
  draw(sampler)
  const greys = luminance(sampler.getImageData(0, 0, LENS_PIXELS, LENS_PIXELS).data)
  const at = (i: number): number => greys[i] ?? 0
  const count = Array.from({ length: LENS_PIXELS }, (_, i) => i)
  const within = shownWithin([pixel[0] - px, pixel[1] - py], hold)
  return {
    row: count.map((i) => at(half * LENS_PIXELS + i)),
    column: count.map((i) => at(i * LENS_PIXELS + half)),
    within,
  }
}

/** Turns and mirrors a square canvas about its middle. */
export function turnAboutMiddle(
  context: Context,
  { quarters, mirror }: { quarters: number; mirror: boolean },
  size: number,
): void {
  context.translate(size / 2, size / 2)
  context.rotate((quarters * Math.PI) / 2)
  if (mirror) context.scale(-1, 1)
  context.translate(-size / 2, -size / 2)
}

function shownWithin(
  [x, y]: readonly [number, number],
  { quarters, mirror }: { quarters: number; mirror: boolean },
): [number, number] {
  let [a, b] = [mirror ? 1 - x : x, y]
  for (let i = 0; i < quarters; i++) [a, b] = [1 - b, a]
  return [a, b]
}
