/** [a, b, c, d, e, f] takes (x, y) to (a x + c y + e, b x + d y + f), as in ISO 32000-1, 8.3.3. */
export type PdfMatrix = readonly [number, number, number, number, number, number]

export const SAME: PdfMatrix = [1, 0, 0, 1, 0, 0]

/** First `inner`, then `outer`. */
export const after = (outer: PdfMatrix, inner: PdfMatrix): PdfMatrix => [
  outer[0] * inner[0] + outer[2] * inner[1],
  outer[1] * inner[0] + outer[3] * inner[1],
  outer[0] * inner[2] + outer[2] * inner[3],
  outer[1] * inner[2] + outer[3] * inner[3],
  outer[0] * inner[4] + outer[2] * inner[5] + outer[4],
  outer[1] * inner[4] + outer[3] * inner[5] + outer[5],
]

/** A matrix of six finite numbers, in whatever kind of list; undefined when it is none. */
export function matrixOf(value: unknown): PdfMatrix | undefined {
  if (typeof value !== 'object' || value === null || !('length' in value)) return undefined
  const numbers = Array.from(value as ArrayLike<unknown>)
  if (numbers.length !== 6 || !numbers.every((one) => typeof one === 'number' && Number.isFinite(one))) {
    return undefined
  }
  return numbers as unknown as PdfMatrix
}

export interface Box {
  left: number
  top: number
  right: number
  bottom: number
}

/** What the unit square becomes. */
export function boxOf([a, b, c, d, e, f]: PdfMatrix): Box {
  const xs = [e, e + a, e + c, e + a + c]
  const ys = [f, f + b, f + d, f + b + d]
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) }
}

export const areaOf = ({ left, top, right, bottom }: Box): number =>
  Math.max(0, right - left) * Math.max(0, bottom - top)
