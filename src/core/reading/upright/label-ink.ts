import type { InkField } from '../network/glyph-network.ts'

/** Ink that hangs together. */
export interface InkPart {
  /** Places in the field, row by row counted. */
  readonly places: readonly number[]
  readonly left: number
  readonly top: number
  /** One past the last pixel. */
  readonly right: number
  readonly bottom: number
}

/** Parts of ink that hang together, by sides and corners of pixels. @param least ink from which on a pixel counts */
export function labelInk({ width, height, ink }: InkField, least: number): InkPart[] {
  const seen = new Uint8Array(ink.length)
  const parts: InkPart[] = []
  for (let start = 0; start < ink.length; start++) {
    if (seen[start] === 1 || (ink[start] ?? 0) < least) continue
    seen[start] = 1
    const places = [start]
    let [left, right, top, bottom] = [width, 0, height, 0]
    for (let n = 0; n < places.length; n++) {
      const at = places[n] ?? 0
      const [x, y] = [at % width, Math.floor(at / width)]
      left = Math.min(left, x)
      right = Math.max(right, x + 1)
      top = Math.min(top, y)
      bottom = Math.max(bottom, y + 1)
      for (let py = Math.max(0, y - 1); py <= Math.min(height - 1, y + 1); py++)
        for (let px = Math.max(0, x - 1); px <= Math.min(width - 1, x + 1); px++) {
          const next = py * width + px
          if (seen[next] === 1 || (ink[next] ?? 0) < least) continue
          seen[next] = 1
          places.push(next)
        }
    }
    parts.push({ places, left, top, right, bottom })
  }
  return parts
}
