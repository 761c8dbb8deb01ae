import { letter } from './lettering.ts'
import { add, lengthOf, lerp, type Pt, polar, quarter, sub, times, unit } from './plane.ts'

/** One stroke of the pen, mm on paper. */
export interface Stroke {
  points: Pt[]
  width: number
  /** Letters are made freehand; lines and arcs along an edge or with the compass. */
  freehand?: boolean
  /** Closed and blacked in: an arrowhead. */
  filled?: boolean
}

/** A printed figure as it stands on the sheet: the corners of its box, mm on paper. */
export interface Figure {
  id: string
  text: string
  corners: Pt[]
}

export interface Board {
  strokes: Stroke[]
  figures: Figure[]
}

/** Widths of line, mm. */
export const PEN = { outline: 0.42, heavy: 0.75, thin: 0.19, lettering: 0.27, title: 0.42 } as const

export const newBoard = (): Board => ({ strokes: [], figures: [] })

export const line = (board: Board, a: Pt, b: Pt, width: number = PEN.outline): void => {
  board.strokes.push({ points: [a, b], width })
}

export function polyline(board: Board, points: Pt[], width: number = PEN.outline): void {
  points.slice(1).forEach((p, i) => {
    line(board, points[i] ?? p, p, width)
  })
}

/** An arc from one angle to another, radians from x towards y (down). */
export function arc(
  board: Board,
  c: Pt,
  r: number,
  from: number,
  to: number,
  width: number = PEN.outline,
): void {
  const n = Math.max(6, Math.ceil(10 * Math.abs(to - from)), Math.ceil((Math.abs(to - from) * r) / 1.2))
  const points = Array.from({ length: n + 1 }, (_, i) => polar(c, r, from + ((to - from) * i) / n))
  board.strokes.push({ points, width })
}

export const circle = (board: Board, c: Pt, r: number, width: number = PEN.outline): void =>
  arc(board, c, r, -0.4, 2 * Math.PI - 0.38, width)

/** Long dash, dot, long dash: a centre line. The pattern begins with half a dash at each end. */
export function centreLine(board: Board, a: Pt, b: Pt): void {
  const length = lengthOf(sub(b, a))
  for (const [from, to] of chain(length)) {
    line(board, lerp(a, b, from / length), lerp(a, b, to / length), PEN.thin)
  }
}

export function centreCircle(board: Board, c: Pt, r: number): void {
  const around = 2 * Math.PI * r
  for (const [from, to] of chain(around)) arc(board, c, r, from / r, to / r, PEN.thin)
}

function chain(length: number): [number, number][] {
  const [dash, gap, dot] = [9, 1.3, 1.4]
  const n = Math.max(1, Math.round(length / (dash + 2 * gap + dot)))
  const k = length / (n * (dash + 2 * gap + dot))
  return Array.from({ length: n }, (_, i) => i * k * (dash + 2 * gap + dot)).flatMap(
    (at): [number, number][] => [
      [at, at + (k * dash) / 2],
      [at + k * (dash / 2 + gap), at + k * (dash / 2 + gap + dot)],
      [at + k * (dash / 2 + 2 * gap + dot), at + k * (dash + 2 * gap + dot)],
    ],
  )
}

/** A slender arrowhead with its point at tip, flying along direction. */
export function arrowhead(board: Board, tip: Pt, direction: Pt): void {
  const back = times(unit(direction), -2.9)
  const side = times(quarter(unit(direction)), 0.42)
  board.strokes.push({
    points: [tip, add(add(tip, back), side), add(tip, times(back, 0.86)), sub(add(tip, back), side)],
    width: 0.08,
    filled: true,
  })
}

export interface LetterOptions {
  height?: number
  /** Direction of writing, radians, y down. */
  angle?: number
  anchor?: 'start' | 'middle' | 'end'
  width?: number
  /** Records the words as a printed figure of this name. */
  figure?: string
}

/** Letters words with the middle of the line at a point. Returns how wide they are, mm. */
export function words(board: Board, at: Pt, text: string, options: LetterOptions = {}): number {
  const { height = 2.6, angle = 0, anchor = 'middle', width = PEN.lettering, figure } = options
  const set = letter(text, height)
  const shift = anchor === 'middle' ? -set.width / 2 : anchor === 'end' ? -set.width : 0
  const place = ([x, y]: Pt): Pt => {
    const u = x + shift
    return [
      at[0] + u * Math.cos(angle) + y * Math.sin(angle),
      at[1] + u * Math.sin(angle) - y * Math.cos(angle),
    ]
  }
  for (const stroke of set.strokes) board.strokes.push({ points: stroke.map(place), width, freehand: true })
  if (figure !== undefined) {
    const corners: Pt[] = [
      [0, set.above],
      [set.width, set.above],
      [set.width, -set.below],
      [0, -set.below],
    ]
    board.figures.push({ id: figure, text, corners: corners.map(place) })
  }
  return set.width
}

/** Lines across a closed outline at 45°, as metal in section is shown. */
export function hatch(board: Board, outline: readonly Pt[], spacing = 1.5): void {
  const [along, across]: [Pt, Pt] = [unit([1, -1]), unit([1, 1])]
  const dot = (p: Pt, d: Pt) => p[0] * d[0] + p[1] * d[1]
  const reach = outline.map((p) => dot(p, across))
  for (let s = Math.min(...reach) + spacing / 2; s < Math.max(...reach); s += spacing) {
    const cuts: number[] = []
    outline.forEach((p, i) => {
      const q = outline[(i + 1) % outline.length] ?? p
      const [sp, sq] = [dot(p, across), dot(q, across)]
      if (sp < s === sq < s) return
      cuts.push(dot(lerp(p, q, (s - sp) / (sq - sp)), along))
    })
    cuts.sort((a, b) => a - b)
    for (let i = 0; i + 1 < cuts.length; i += 2) {
      const at = (t: number): Pt => add(times(across, s), times(along, t))
      line(board, at(cuts[i] ?? 0), at(cuts[i + 1] ?? 0), PEN.thin)
    }
  }
}
