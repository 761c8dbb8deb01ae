import type { Edges } from '../glyphs/edges.ts'
import { extentOfItem, type RowItem } from './item.ts'
import { isDigit, likelihoodOf } from './placed-glyph.ts'

/** Gaps, in heights of a full digit: a space where they are wider by this much, as often as not. */
const [NARROWEST, USUAL, WIDEST] = [0.34, 0.42, 0.6]
/** Over so much the odds change by a factor of e. */
const SOFTNESS = 0.06
/** Wide lettering has wide gaps: a space is wider than the narrow ones of them by this factor. */
const OF_NARROW = 2.2
/** So many times less often there is a space before one of these, after one of those, at a dash. */
const [BEFORE_MARK, AFTER_MARK, AT_DASH] = [0.15, 0.15, 0.4]

/** How wide a gap of a row is a space as often as not, in pixels. */
export function spaceOfRow(row: readonly RowItem[], high: number): number {
  const gaps: number[] = []
  for (const [i, item] of row.entries()) {
    const next = row[i + 1]
    if (item.kind === 'glyph' && next?.kind === 'glyph') gaps.push(next.glyph.left - item.glyph.right)
  }
  if (gaps.length < 3) return USUAL * high
  gaps.sort((a, b) => a - b)
  const narrow = gaps[Math.floor(gaps.length / 4)] ?? 0
  return Math.min(WIDEST, Math.max(NARROWEST, (OF_NARROW * narrow) / high)) * high
}

/** Probability that words part between two neighbours of a row. */
export function spaceBetween(before: RowItem, after: RowItem, space: number, high: number): number {
  const [a, b]: [Edges, Edges] = [extentOfItem(before), extentOfItem(after)]
  const byGap = 1 / (1 + Math.exp((space - (b.left - a.right)) / (SOFTNESS * high)))
  const number = before.kind === 'glyph' ? likelihoodOf(before.glyph.seen, '0123456789') : 0
  // Between a whole number and its fraction there is one, however close they stand.
  if (after.kind === 'stack') return after.sort === 'limits' ? 1 : Math.max(number, byGap)
  const { name } = after.glyph
  const factor =
    (`'"°.,):`.includes(name) ? BEFORE_MARK : 1) *
    (before.kind === 'glyph' && '.,('.includes(before.glyph.name) ? AFTER_MARK : 1) *
    (name === '-' || (before.kind === 'glyph' && before.glyph.name === '-') ? AT_DASH : 1)
  return byGap * factor
}

/**
 * Where the numerator of a fraction with a slash begins: small digits raised before the slash, after a full one.
 * @returns the place in the row of its first digit, for each such fraction
 */
export function raisedNumerators(row: readonly RowItem[]): number[] {
  const starts: number[] = []
  for (const [slash, item] of row.entries()) {
    if (item.kind !== 'glyph' || item.glyph.name !== '/') continue
    const last = row[slash - 1]
    if (last?.kind !== 'glyph' || !isDigit(last.glyph.name)) continue
    let start = slash - 1
    for (let i = slash - 2; i >= 0; i--) {
      const one = row[i]
      if (one?.kind !== 'glyph' || !isDigit(one.glyph.name)) break
      const smaller = last.glyph.height < 0.85 * one.glyph.height
      const raised = one.glyph.bottom - last.glyph.bottom > 0.15 * one.glyph.height
      if (smaller && raised) {
        starts.push(start)
        break
      }
      start = i
    }
  }
  return starts
}
