import { type Edges, glyphEdges } from '../glyphs/edges.ts'
import type { SeenGlyph } from '../glyphs/seen-glyph.ts'
import { FLAT, isTall, likelihoodOf } from '../layout/placed-glyph.ts'
import { neighboursAmong } from './glyph-neighbours.ts'

/** Less likely there than this a glyph holds nothing together. */
const HOLDS = 0.3
/** Glyphs of one word stand no further apart, in their heights. */
const GAP = 0.45
/** They share so much of the lower one's height; a mark stands from so far above a glyph to so far below. */
const [SHARED, MARK_REACH] = [0.4, 0.3]
/** A number stands so near over or under the bar of its fraction, or the other number where there is no bar. */
const [TO_BAR, TO_OTHER] = [0.5, 0.42]
/** Digits of a fraction are lower than so many heights of full ones. */
const SMALL = 0.92
/** A bar is no longer than so many heights. */
const LONGEST_BAR = 3.2

/** Glyphs that surely belong together: words, and the parts of a fraction. Each is in one, but those that are faint. */
export function glyphAtoms(seen: readonly SeenGlyph[], high: number): SeenGlyph[][] {
  const glyphs = seen.filter(({ present }) => present >= HOLDS)
  const edges = glyphs.map(glyphEdges)
  const { rootOf } = neighboursAmong(edges, high, (a, b, gap, i, j) => {
    const [first, second] = [glyphs[i], glyphs[j]]
    if (first === undefined || second === undefined) return false
    return (
      inRow(first, second, a, b, gap, high) ||
      atBar(first, a, second, b, high) ||
      atBar(second, b, first, a, high) ||
      stacked(first, second, a, b, high)
    )
  })
  const atoms = new Map<number, SeenGlyph[]>()
  for (const [i, glyph] of glyphs.entries()) {
    const at = rootOf(i)
    const atom = atoms.get(at)
    if (atom === undefined) atoms.set(at, [glyph])
    else atom.push(glyph)
  }
  return [...atoms.values()]
}

const nameOf = ({ alternatives }: SeenGlyph): string => alternatives[0]?.text ?? ''
const isFlat = (glyph: SeenGlyph): boolean => FLAT.includes(nameOf(glyph))

function inRow(a: SeenGlyph, b: SeenGlyph, at: Edges, to: Edges, gap: number, high: number): boolean {
  const [tallA, tallB] = [isTall(nameOf(a)), isTall(nameOf(b))]
  const tall = Math.max(tallA ? a.height : 0, tallB ? b.height : 0, 0.6 * high)
  if (gap > GAP * Math.min(tall, 1.6 * high)) return false
  if (tallA && tallB) {
    const shared = Math.min(at.bottom, to.bottom) - Math.max(at.top, to.top)
    return shared > SHARED * Math.min(a.height, b.height)
  }
  if (tallA === tallB) return Math.abs(a.centre[1] - b.centre[1]) < 0.3 * high
  const [mark, whole] = tallA ? [b, at] : [a, to]
  const reach = MARK_REACH * (whole.bottom - whole.top)
  const long = isFlat(mark) && mark.width > 1.2 * high
  return !long && mark.centre[1] > whole.top - reach && mark.centre[1] < whole.bottom + reach
}

function atBar(bar: SeenGlyph, at: Edges, digit: SeenGlyph, to: Edges, high: number): boolean {
  if (likelihoodOf(bar, FLAT) < 0.3 || bar.width < 0.3 * high || bar.width > LONGEST_BAR * high) return false
  if (likelihoodOf(digit, '0123456789') < 0.3) return false
  const x = digit.centre[0]
  if (x < at.left - 0.2 * high || x > at.right + 0.2 * high) return false
  return Math.max(at.top - to.bottom, to.top - at.bottom) < TO_BAR * digit.height
}

/** Small digits one right over the other. */
function stacked(a: SeenGlyph, b: SeenGlyph, at: Edges, to: Edges, high: number): boolean {
  if (Math.max(a.height, b.height) > SMALL * high) return false
  if (likelihoodOf(a, '0123456789') < 0.3 || likelihoodOf(b, '0123456789') < 0.3) return false
  const shared = Math.min(at.right, to.right) - Math.max(at.left, to.left)
  const gap = Math.max(at.top, to.top) - Math.min(at.bottom, to.bottom)
  return (
    shared > 0.4 * Math.min(a.width, b.width) &&
    gap < TO_OTHER * Math.max(a.height, b.height) &&
    gap > -0.3 * high
  )
}
