import { type BoxSize, type Camera, toScreen } from '../camera/camera.ts'

/** How a picture of the box is moved and enlarged, about its upper left corner, CSS pixels. */
export interface Carried {
  x: number
  y: number
  scale: number
}

/** A picture that was moved by more than this share of the box, or enlarged by more than this, is drawn anew. */
const FAR = 0.4
const LARGER = 1.5

/**
 * How what was drawn for one camera is carried along to stand where another would have it; null when it is to be
 * drawn anew, because the sheet was turned or much of what is in sight now was not drawn.
 */
export function carried(drawn: Camera, now: Camera, box: BoxSize): Carried | null {
  if (drawn.turn !== now.turn || drawn.mirror !== now.mirror) return null
  const scale = now.zoom / drawn.zoom
  const [centreX, centreY] = toScreen(now, box, drawn.centre)
  const far = Math.max(Math.abs(centreX / box.width - 0.5), Math.abs(centreY / box.height - 0.5))
  if (!(far <= FAR && scale <= LARGER && scale >= 1 / LARGER)) return null
  return { x: centreX - (scale * box.width) / 2, y: centreY - (scale * box.height) / 2, scale }
}
