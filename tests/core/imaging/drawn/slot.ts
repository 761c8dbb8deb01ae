import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'

/** A slot as it is drawn: half of what lies between its centres, the radius of its ends, both along their middle lines. */
export interface Slot {
  middle: Pixel
  half: number
  radius: number
  /** Of its axis, radians. */
  tilt: number
  /** Of the stroke, pixels. */
  width: number
  /** Whether a centre line runs along it and beyond. */
  centreLine?: boolean
}

/** Where the middle of an end is: 1 and -1 for the two. */
export function endOf({ middle: [x, y], half, tilt }: Slot, end: 1 | -1): Pixel {
  return pixel(x + end * half * Math.cos(tilt), y + end * half * Math.sin(tilt))
}

/** A place on an end's middle line, so far round from its top (radians) and so far outside (pixels). */
export function placeOnEnd(slot: Slot, end: 1 | -1, round: number, outside = 0): Pixel {
  const [x, y] = endOf(slot, end)
  const way = slot.tilt + (end === 1 ? 0 : Math.PI) + round
  const far = slot.radius + outside
  return pixel(x + far * Math.cos(way), y + far * Math.sin(way))
}

/** The slot in SVG, of pixels. */
export function drawnSlot(slot: Slot): string {
  const { radius, width, centreLine = false } = slot
  const corner = (end: 1 | -1, side: 1 | -1): string => placeOnEnd(slot, end, (side * Math.PI) / 2).join(' ')
  const arc = `A${radius} ${radius} 0 0 1 `
  const outline = `M${corner(-1, 1)}L${corner(1, -1)}${arc}${corner(1, 1)}L${corner(-1, -1)}${arc}${corner(-1, 1)}Z`
  const [from, to] = [placeOnEnd(slot, -1, 0, 12), placeOnEnd(slot, 1, 0, 12)]
  const line = `<path d="M${from.join(' ')}L${to.join(' ')}" stroke="black" stroke-width="${Math.max(1.2, width / 2)}"/>`
  return `<path d="${outline}" fill="none" stroke="black" stroke-width="${width}"/>${centreLine ? line : ''}`
}
