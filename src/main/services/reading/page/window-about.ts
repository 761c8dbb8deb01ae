import type { PageArea } from '../../pictures/layout/block.ts'
import type { PixelSize } from '../../scans/page/pixel-size.ts'

/** Room round a box, as a share of its longer side: witness lines and a fraction's other half begin there. */
const ROOM = 0.25
/** And at least so many pixels. */
const LEAST_ROOM = 16

export interface TurnedSides extends PixelSize {
  x: number
  y: number
  angle?: number | undefined
}

/** The part of a page that holds a box, however it is turned, and some room round it. */
export function windowAbout({ x, y, width, height, angle = 0 }: TurnedSides, page: PixelSize): PageArea {
  const turn = (angle * Math.PI) / 180
  const [c, s] = [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))]
  const room = Math.max(LEAST_ROOM, ROOM * Math.max(width, height))
  // Upright as it was given too: who gives a box and the angle of its lettering may mean either.
  const across = Math.max(width, width * c + height * s) / 2 + room
  const down = Math.max(height, width * s + height * c) / 2 + room
  const [left, right] = within(x + width / 2, across, page.width)
  const [top, bottom] = within(y + height / 2, down, page.height)
  return { left, top, width: right - left, height: bottom - top }
}

/** From where to where on a side, whole pixels, one at least. */
function within(middle: number, half: number, side: number): [from: number, to: number] {
  const from = Math.min(side - 1, Math.max(0, Math.floor(middle - half)))
  return [from, Math.max(from + 1, Math.min(side, Math.ceil(middle + half)))]
}
