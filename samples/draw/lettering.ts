import { ALPHABET } from './alphabet.ts'
import { add, type Pt } from './plane.ts'
import { smoothCurve } from './smooth-curve.ts'

/** Words set in single strokes, mm, x along the line of writing, y up, the middle of the line at the origin. */
export interface Lettering {
  strokes: Pt[][]
  width: number
  /** How far above and below the middle of the line it reaches. */
  above: number
  below: number
}

/** Capitals of the alphabet are drawn six units high. */
const CAPITAL = 6
const GAP = 1.25
const SPACE = 3
/** Lean of the letters: one in five. */
const LEAN = 0.2
/** Numerals of a stacked fraction, against those of the whole number. */
const SMALL = 0.68

/**
 * Letters a line of words; `3/8` becomes a stacked fraction with a level bar.
 * @param height of the capitals, mm
 */
export function letter(text: string, height: number): Lettering {
  const strokes: Pt[][] = []
  let x = 0
  let above = height / 2
  let below = height / 2
  for (const piece of text.split(/(\d+\/\d+)/)) {
    const fraction = /^(\d+)\/(\d+)$/.exec(piece)
    if (fraction === null) {
      // The inch mark leans away from the fraction before it: close it up.
      if (piece.startsWith('"') && x > 0) x -= (0.9 * height) / CAPITAL
      const run = plain(piece, height)
      strokes.push(...run.strokes.map((stroke) => stroke.map((p) => add(p, [x, -height / 2]))))
      x += run.width
      continue
    }
    const small = height * SMALL
    const over = plain(fraction[1] ?? '', small)
    const under = plain(fraction[2] ?? '', small)
    const bar = Math.max(over.width, under.width) + 0.25 * small
    const clear = 0.24 * small
    const set = (run: { strokes: Pt[][]; width: number }, foot: number) => {
      const from: Pt = [x + (bar - run.width) / 2 + LEAN * foot, foot]
      strokes.push(...run.strokes.map((stroke) => stroke.map((p) => add(p, from))))
    }
    set(over, clear)
    set(under, -clear - small)
    strokes.push([
      [x - 0.04 * small, 0],
      [x + bar, 0],
    ])
    above = Math.max(above, clear + small)
    below = Math.max(below, clear + small)
    x += bar + (GAP * height) / CAPITAL
  }
  return { strokes, width: Math.max(0, x - (GAP * height) / CAPITAL), above, below }
}

/** A run of letters without fractions; the foot of the letters on y = 0; its width ends with the gap to the next. */
function plain(text: string, height: number): { strokes: Pt[][]; width: number } {
  const k = height / CAPITAL
  const strokes: Pt[][] = []
  let x = 0
  for (const character of text) {
    if (character === ' ') {
      x += SPACE
      continue
    }
    const glyph = ALPHABET.get(character)
    if (glyph === undefined) throw new Error(`The alphabet has no letter "${character}" (in "${text}").`)
    for (const { smooth, points } of glyph.strokes) {
      const curve = smooth ? smoothCurve(points) : points
      strokes.push(curve.map(([px, py]): Pt => [(x + px + LEAN * py) * k, py * k]))
    }
    x += glyph.width + GAP
  }
  return { strokes, width: x * k }
}
