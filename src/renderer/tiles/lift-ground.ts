import type { Extent } from '../camera/camera.ts'

/**
 * Divides what is drawn by the ground of the sheet, so that stains and folds fade: dodging by the inverse of the
 * ground is division by it. A sheet that is light on dark is divided as its negative, and comes out as that.
 * @param context with the pixel of the scan as its unit
 */
export function liftGround(
  context: OffscreenCanvasRenderingContext2D,
  ground: HTMLImageElement,
  sheet: Extent,
  darkScan: boolean,
): void {
  const [width, height] = [sheet.right - sheet.left, sheet.bottom - sheet.top]
  if (darkScan) {
    context.globalCompositeOperation = 'difference'
    context.fillStyle = 'white'
    context.fillRect(sheet.left, sheet.top, width, height)
  }
  context.globalCompositeOperation = 'color-dodge'
  context.imageSmoothingEnabled = true
  context.drawImage(darkScan ? ground : inverse(ground), sheet.left, sheet.top, width, height)
  context.globalCompositeOperation = 'source-over'
}

const inverses = new WeakMap<HTMLImageElement, OffscreenCanvas>()

function inverse(picture: HTMLImageElement): OffscreenCanvas | HTMLImageElement {
  const before = inverses.get(picture)
  if (before !== undefined) return before
  const canvas = new OffscreenCanvas(picture.naturalWidth, picture.naturalHeight)
  const context = canvas.getContext('2d')
  if (context === null) return picture
  context.drawImage(picture, 0, 0)
  context.globalCompositeOperation = 'difference'
  context.fillStyle = 'white'
  context.fillRect(0, 0, picture.naturalWidth, picture.naturalHeight)
  inverses.set(picture, canvas)
  return canvas
}
