import type { SheetPictures } from '../../contract/pictures.ts'
import type { Extent } from '../camera/camera.ts'
import type { Aids } from '../looking/aids.ts'
import { scanTone } from '../looking/scan-tone.ts'
import { groundAddress, overviewAddress } from './addresses.ts'
import { liftGround } from './lift-ground.ts'
import { isDark, keptPictures } from './the-pictures.ts'

type Context = OffscreenCanvasRenderingContext2D

/** A part of a scan as it is looked at: one pixel for each of the scan. */
interface LensSource {
  picture: OffscreenCanvas
  /** Where its upper left corner lies on the scan, pixels. */
  left: number
  top: number
}

/**
 * A part of a scan lifted, as its negative and in the contrast that it is looked at with; not turned and not mirrored.
 * For the lens: with the pixel of the scan as the context's unit, `drawImage(picture, left, top)` stands for
 * `drawFrom(context, box, level, pictures)`, and the style of the canvas needs no filter. Greys are to be read
 * from the untouched scan, never from this.
 * @param box pixels of the scan; rounded outwards
 * @param draw draws that box of the untouched scan, the context's unit being its pixel, as `drawFrom` does
 * @returns null where the browser gives no canvas
 */
export function lensSource(
  pictures: SheetPictures,
  aids: Aids,
  box: Extent,
  draw: (context: Context) => void,
): LensSource | null {
  const [left, top] = [Math.floor(box.left), Math.floor(box.top)]
  const [width, height] = [Math.ceil(box.right) - left, Math.ceil(box.bottom) - top]
  const dark = isDark(overviewAddress(pictures))
  const ground = aids.lift ? keptPictures.get(groundAddress(pictures), 'image') : undefined
  const { filter, lift } = scanTone(aids, dark, ground !== undefined)
  const plain = contextOf(width, height)
  if (plain === null) return null
  plain.translate(-left, -top)
  plain.imageSmoothingEnabled = false
  draw(plain)
  if (ground !== undefined && lift !== null) {
    const sheet = { left: 0, top: 0, right: pictures.width, bottom: pictures.height }
    liftGround(plain, ground, sheet, lift === 'negative')
  }
  if (filter === '') return { picture: plain.canvas, left, top }
  const toned = contextOf(width, height)
  if (toned === null) return null
  toned.filter = filter
  toned.drawImage(plain.canvas, 0, 0)
  return { picture: toned.canvas, left, top }
}

const contextOf = (width: number, height: number): Context | null =>
  new OffscreenCanvas(Math.max(1, width), Math.max(1, height)).getContext('2d')
