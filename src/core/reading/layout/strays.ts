import { edgesRound } from '../glyphs/edges.ts'
import { extentOfItem, type RowItem } from './item.ts'
import { isTall, type PlacedGlyph } from './placed-glyph.ts'

/** Farther than this from the rest of its row, in heights of a full digit, a glyph is hardly of the figure. */
const FAR = 2.2
/** What is left of the probability that such a one is there, and of one of another size. */
const APART = 0.2
const OF_ANOTHER_SIZE = 0.3
/** What is less likely to be there is dropped. */
const LEAST = 0.05

/** Rows without what stands apart: it is dropped, or goes on with a lower probability that it is there at all. */
export function withoutStrays(rows: readonly (readonly RowItem[])[], high: number): RowItem[][] {
  const most = Math.max(...rows.map(massOf))
  const main = rows.find((row) => massOf(row) === most) ?? []
  return rows
    .map((row) => {
      const other = row === main ? 1 : ofOtherRow(row, main, most, high)
      return apart(row, high).flatMap(({ item, factor }) => lowered(item, factor * other, high))
    })
    .filter((row) => row.length > 0)
}

const massOf = (row: readonly RowItem[]): number =>
  row.reduce((sum, item) => sum + glyphsOf(item).reduce((all, { present }) => all + present, 0), 0)

const glyphsOf = (item: RowItem): readonly PlacedGlyph[] =>
  item.kind === 'glyph' ? [item.glyph] : [...item.over, ...item.under]

/** A small row that is not right over or under the main one, or far from it, is no second line of it. */
function ofOtherRow(row: readonly RowItem[], main: readonly RowItem[], most: number, high: number): number {
  const [a, b] = [edgesRound(row.map(extentOfItem)), edgesRound(main.map(extentOfItem))]
  const gap = Math.max(a.top - b.bottom, b.top - a.bottom)
  const beside = a.left > b.right + high / 2 || a.right < b.left - high / 2
  const small = massOf(row) < 0.4 * most && !row.some((item) => item.kind === 'stack')
  return gap > 1.6 * high || beside || (small && massOf(row) < 0.8) ? APART : 1
}

/** The largest part of a row whose items are near one another is the figure's; the others are lowered. */
function apart(row: readonly RowItem[], high: number): { item: RowItem; factor: number }[] {
  const parts: RowItem[][] = []
  let reach = Number.NEGATIVE_INFINITY
  for (const item of row) {
    const { left, right } = extentOfItem(item)
    const part = parts.at(-1)
    if (part === undefined || left - reach > FAR * high) parts.push([item])
    else part.push(item)
    reach = Math.max(reach, right)
  }
  const most = Math.max(...parts.map(massOf))
  return parts.flatMap((part) => part.map((item) => ({ item, factor: massOf(part) === most ? 1 : APART })))
}

function lowered(item: RowItem, factor: number, high: number): RowItem[] {
  if (item.kind === 'stack') {
    const lower = (glyphs: readonly PlacedGlyph[]) =>
      glyphs.map((glyph) => ({ ...glyph, present: glyph.present * factor }))
    return [factor < 1 ? { ...item, over: lower(item.over), under: lower(item.under) } : item]
  }
  const { glyph } = item
  const odd = isTall(glyph.name)
    ? glyph.height < 0.4 * high || glyph.height > 1.8 * high
    : glyph.height > 2 * high
  const present = glyph.present * factor * (odd ? OF_ANOTHER_SIZE : 1)
  return present < LEAST ? [] : [{ kind: 'glyph', glyph: { ...glyph, present } }]
}
