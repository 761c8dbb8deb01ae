import type { PaintedPicture } from './page-content.ts'

/** How a picture lies on a page: turned by quarters clockwise, and then mirrored, left for right. */
export interface Turn {
  quarters: 0 | 1 | 2 | 3
  mirrored: boolean
  /** Whether its rows run up or down the page. */
  across: boolean
}

/** Half a pixel at its far end. */
const SKEW = 0.5

/** How a picture lies on the page; undefined when it lies askew, or is nothing. */
export function turnOf({ at: [a, b, c, d], width, height }: PaintedPicture): Turn | undefined {
  const across = Math.abs(b) > Math.abs(a)
  // Along the rows of the picture, and down its columns (its own y goes up).
  const [right, rightSkew] = across ? [b, a] : [a, b]
  const [down, downSkew] = across ? [-c, -d] : [-d, -c]
  if (right === 0 || down === 0) return undefined
  if (Math.abs(rightSkew / down) * height > SKEW || Math.abs(downSkew / right) * width > SKEW)
    return undefined
  if (!across) {
    const mirrored = right < 0 !== down < 0
    return { quarters: down > 0 ? 0 : 2, mirrored, across }
  }
  // A quarter clockwise takes what runs right to run down, and what runs down to run left.
  const mirrored = right > 0 === down > 0
  return { quarters: right > 0 ? 1 : 3, mirrored, across }
}
