import { arc, arrowhead, type Board, line, PEN, words } from './drawing-board.ts'
import { letter } from './lettering.ts'
import { add, lengthOf, lerp, type Pt, polar, sub, times, unit } from './plane.ts'

export const FIGURE_HEIGHT = 3.1

export interface DimensionOptions {
  figure?: string
  /** Where along the line its figure stands; 0.5 in the middle. */
  at?: number
  /** For a space too small: arrows from outside, the figure beyond the end b or beside the line. */
  outside?: 'beyond-b' | 'beyond-a'
  height?: number
}

/** Letters read from the foot of the sheet or from its right-hand side. */
function reading(angle: number): number {
  let a = angle
  while (a > Math.PI / 2 - 0.02) a -= Math.PI
  while (a <= -Math.PI / 2 - 0.02) a += Math.PI
  return a
}

/** A dimension line between two points, broken for its figure. */
export function dimensionLine(
  board: Board,
  a: Pt,
  b: Pt,
  text: string,
  options: DimensionOptions = {},
): void {
  const { figure, at = 0.5, outside, height = FIGURE_HEIGHT } = options
  const d = unit(sub(b, a))
  const length = lengthOf(sub(b, a))
  const angle = reading(Math.atan2(d[1], d[0]))
  const half = letter(text, height).width / 2 + 1.1
  const set = { height, angle, ...(figure === undefined ? {} : { figure }) }
  if (outside === undefined) {
    const middle = lerp(a, b, at)
    line(board, a, add(middle, times(d, -half)), PEN.thin)
    line(board, add(middle, times(d, half)), b, PEN.thin)
    arrowhead(board, a, times(d, -1))
    arrowhead(board, b, d)
    words(board, middle, text, set)
    return
  }
  const tail = 5.5
  line(board, add(a, times(d, -tail)), a, PEN.thin)
  line(board, b, add(b, times(d, tail)), PEN.thin)
  arrowhead(board, a, d)
  arrowhead(board, b, times(d, -1))
  const far = outside === 'beyond-b' ? length + tail + half : -tail - half
  words(board, add(a, times(d, far)), text, set)
}

/** A witness line from a feature to a dimension line: a small gap at the feature, a little past the line. */
export function witness(board: Board, from: Pt, to: Pt): void {
  const d = unit(sub(to, from))
  line(board, add(from, times(d, 1.1)), add(to, times(d, 1.5)), PEN.thin)
}

/** An upright dimension at x between two features, with witness lines. */
export function uprightDimension(
  board: Board,
  a: Pt,
  b: Pt,
  x: number,
  text: string,
  options: DimensionOptions = {},
): void {
  witness(board, a, [x, a[1]])
  witness(board, b, [x, b[1]])
  dimensionLine(board, [x, a[1]], [x, b[1]], text, options)
}

/** A level dimension at y between two features, with witness lines. */
export function levelDimension(
  board: Board,
  a: Pt,
  b: Pt,
  y: number,
  text: string,
  options: DimensionOptions = {},
): void {
  witness(board, a, [a[0], y])
  witness(board, b, [b[0], y])
  dimensionLine(board, [a[0], y], [b[0], y], text, options)
}

/** A leader from words to a feature; the arrow lies on the feature. */
export function leader(board: Board, tip: Pt, knee: Pt, end: Pt): void {
  line(board, end, knee, PEN.thin)
  line(board, knee, tip, PEN.thin)
  arrowhead(board, tip, sub(tip, knee))
}

/** An angle's arc about a corner, broken for its figure; angles from x towards y (down). */
export function angleDimension(
  board: Board,
  corner: Pt,
  radius: number,
  from: number,
  to: number,
  text: string,
  options: { figure?: string; height?: number } = {},
): void {
  const { figure, height = FIGURE_HEIGHT } = options
  const middle = (from + to) / 2
  const half = (letter(text, height).width / 2 + 0.9) / radius
  const sign = Math.sign(to - from)
  arc(board, corner, radius, from, middle - sign * half, PEN.thin)
  arc(board, corner, radius, middle + sign * half, to, PEN.thin)
  const lean = (2.9 / radius / 2) * sign
  const tangent = (a: number): Pt => [-Math.sin(a) * sign, Math.cos(a) * sign]
  arrowhead(board, polar(corner, radius, from), times(tangent(from + lean), -1))
  arrowhead(board, polar(corner, radius, to), tangent(to - lean))
  words(board, polar(corner, radius, middle), text, { height, ...(figure === undefined ? {} : { figure }) })
}
