import { edgesRound } from '../glyphs/edges.ts'
import { extentOfItem, type RowItem } from './item.ts'
import { isTall } from './placed-glyph.ts'

/** Middles of one row differ by less than this, in heights of a full digit: small digits at a slash stand higher and lower. */
const OF_ONE_ROW = 0.6
/** A mark belongs to a row from so far above it to so far below, in the same. */
const MARK_REACH = 0.35

/** Rows, the upper first, each in reading order. Marks go to the row that they stand in; one in none has a row of its own. */
export function rowsOf(items: readonly RowItem[], high: number): RowItem[][] {
  const middle = (item: RowItem): number => {
    const { top, bottom } = extentOfItem(item)
    return item.kind === 'stack'
      ? (edgesRound(item.over).bottom + edgesRound(item.under).top) / 2 || 0
      : (top + bottom) / 2
  }
  const rows: { items: RowItem[]; middle: number }[] = []
  const isAnchor = (item: RowItem): boolean =>
    item.kind === 'stack' || (isTall(item.glyph.name) && item.glyph.height > 0.4 * high)
  for (const item of items.filter(isAnchor).sort((a, b) => middle(a) - middle(b))) {
    const row = rows.at(-1)
    const at = middle(item)
    if (row === undefined || at - row.middle > OF_ONE_ROW * high) rows.push({ items: [item], middle: at })
    else {
      row.items.push(item)
      row.middle += (at - row.middle) / row.items.length
    }
  }
  const anchored = rows.map((row) => ({ ...row, extent: edgesRound(row.items.map(extentOfItem)) }))
  for (const item of items.filter((one) => !isAnchor(one))) {
    const at = middle(item)
    const reach = MARK_REACH * high
    const row = anchored
      .filter(({ extent }) => at > extent.top - reach && at < extent.bottom + reach)
      .map((one) => ({ ...one, away: gapTo(one.items, item) + Math.abs(at - one.middle) }))
      .sort((a, b) => a.away - b.away)[0]
    if (row !== undefined) row.items.push(item)
    else {
      const last = rows.find((one) => Math.abs(one.middle - at) < OF_ONE_ROW * high)
      if (last !== undefined) last.items.push(item)
      else rows.push({ items: [item], middle: at })
    }
  }
  const across = (item: RowItem): number => {
    const { left, right } = extentOfItem(item)
    return left + right
  }
  return rows
    .sort((a, b) => a.middle - b.middle)
    .map((row) => row.items.sort((a, b) => across(a) - across(b)))
}

/** How far the nearest item of a row is along it. */
function gapTo(row: readonly RowItem[], item: RowItem): number {
  const { left, right } = extentOfItem(item)
  return Math.min(
    ...row.map((one) => {
      const other = extentOfItem(one)
      return Math.max(0, other.left - right, left - other.right)
    }),
  )
}
