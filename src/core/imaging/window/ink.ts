import * as elements from '../../linear-algebra/elements-unchecked.ts'
import type { GreyWindow } from './grey-window.ts'

const { grey: greyOf } = elements

/** Which way ink differs from what it is drawn on: dark strokes on light paper, or light ones as on a blueprint. */
export type Ink = 'dark' | 'light'

/** Paper is looked at in squares of this side, pixels: uneven from one to the next it is still even in each. */
const SQUARE = 64
/** Of more squares than this only some are looked at, evenly. */
const MOST_SQUARES = 256
/** Steps of this share of one never fall together. */
const GOLDEN = (Math.sqrt(5) - 1) / 2
/** Where ink covers a third of what is looked at, its skewness is this; a half makes it 0. */
const CLEAR = 0.6

/** Grey values, wherever in a scan they are. */
type Greys = Pick<GreyWindow, 'width' | 'height' | 'data'>

/** Sums of third powers of how far grey values are from their mean: with their signs, and without. */
interface ThirdPowers {
  signed: number
  whole: number
}

/**
 * Which way the strokes of a picture differ from its paper, by what there is less of: paper is the majority. Squares that
 * are all paper or all ink say nothing, the border of an area about as much for either.
 * @returns null where neither is clearly the lesser: nothing but paper, as much ink as paper
 * Method: skewness, by the sum of third powers over that of their sizes, (1 − 2p)/((1 − p)² + p²) for a share p of ink.
 */
export function settledInk(...windows: readonly Greys[]): Ink | null {
  const all = windows.reduce((sum, { width, height }) => sum + inSquares(width) * inSquares(height), 0)
  const count = Math.min(all, MOST_SQUARES)
  let signed = 0
  let whole = 0
  for (let i = 0; i < count; i++) {
    // Not at even steps, which may be those of the rows.
    const powers = powersOfSquare(windows, Math.floor(((i + ((i * GOLDEN) % 1)) * all) / count))
    signed += powers.signed
    whole += powers.whole
  }
  return signed < -CLEAR * whole ? 'dark' : signed > CLEAR * whole ? 'light' : null
}

const inSquares = (pixels: number): number => Math.ceil(pixels / SQUARE)

/** Of one square, counted row by row from window to window. */
function powersOfSquare(windows: readonly Greys[], square: number): ThirdPowers {
  let left = square
  for (const greys of windows) {
    const [across, down] = [inSquares(greys.width), inSquares(greys.height)]
    if (left < across * down)
      return thirdPowers(greys, (left % across) * SQUARE, Math.floor(left / across) * SQUARE)
    left -= across * down
  }
  return { signed: 0, whole: 0 }
}

function thirdPowers({ width, height, data }: Greys, left: number, top: number): ThirdPowers {
  const [right, bottom] = [Math.min(left + SQUARE, width), Math.min(top + SQUARE, height)]
  let sum = 0
  for (let y = top; y < bottom; y++) for (let x = left; x < right; x++) sum += greyOf(data, y * width + x)
  const mean = sum / ((right - left) * (bottom - top))
  let signed = 0
  let whole = 0
  for (let y = top; y < bottom; y++)
    for (let x = left; x < right; x++) {
      const away = greyOf(data, y * width + x) - mean
      signed += away * away * away
      whole += Math.abs(away * away * away)
    }
  return { signed, whole }
}
