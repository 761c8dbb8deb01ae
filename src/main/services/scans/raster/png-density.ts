import { type Density, soundDensity } from '../page/density.ts'

const METRES_PER_INCH = 0.0254

/** The chunk counts whole pixels to the metre: 300 dpi is written as 11,811, which is 299.9994. */
function inchesOf(perMetre: number): number {
  const dpi = perMetre * METRES_PER_INCH
  const whole = Math.round(dpi)
  return Math.abs(dpi - whole) <= METRES_PER_INCH / 2 ? whole : dpi
}

/**
 * The resolution that a PNG file states in its chunk pHYs, pixels per inch; undefined when it states none, or only the
 * shape of a pixel. @param head the beginning of the file. Source: PNG (ISO/IEC 15948), 11.3.5.3.
 */
export function pngDensity(head: Buffer): Density | undefined {
  for (let at = 8; at + 12 <= head.length; ) {
    const length = head.readUInt32BE(at)
    const type = head.toString('latin1', at + 4, at + 8)
    if (type === 'IDAT' || type === 'IEND') return undefined
    if (type === 'pHYs' && length === 9 && at + 17 <= head.length) {
      if (head.readUInt8(at + 16) !== 1) return undefined
      return soundDensity(inchesOf(head.readUInt32BE(at + 8)), inchesOf(head.readUInt32BE(at + 12)))
    }
    at += 12 + length
  }
  return undefined
}
