import * as elements from '../../linear-algebra/elements-unchecked.ts'

const { f64, u16 } = elements

/** How far on both sides of the stroke its ground is looked at, and how far from its edge, pixels. */
export const groundReach = (width: number): number => Math.min(Math.max(width, 2.5), 5)
export const GAP = 0.75

/** Places across per pixel. */
export const PER_PIXEL = 2

/** Sums and counts of grey values by piece and place across. */
export interface GreyMeans {
  total: Float64Array
  count: Uint16Array
}

/**
 * Running integral of the mean grey value of a piece over its place across; where there is no pixel the last holds.
 * @param at where the piece begins in the means; sums: receives it
 * @returns whether the piece has any pixel
 */
export function cumulate(
  { total, count }: GreyMeans,
  at: number,
  columns: number,
  sums: Float64Array,
): boolean {
  let last = Number.NaN
  for (let b = 0; b < columns && Number.isNaN(last); b++) {
    const n = u16(count, at + b)
    if (n > 0) last = f64(total, at + b) / n
  }
  if (Number.isNaN(last)) return false
  for (let b = 0; b < columns; b++) {
    const n = u16(count, at + b)
    if (n > 0) last = f64(total, at + b) / n
    sums[b + 1] = f64(sums, b) + last
  }
  return true
}

/** The columns to fill in. */
export interface ColumnRange {
  first: number
  last: number
  step: number
}

/**
 * By how much the inside of a bar of a width differs from the ground on both sides, at each column, from the running
 * integral: the lesser of the two, 0 when they disagree.
 */
export function fillBars(
  sums: Float64Array,
  columns: number,
  width: number,
  out: Float32Array,
  at: number,
  { first, last, step }: ColumnRange,
): void {
  const inside = Math.max(1, Math.round((width * PER_PIXEL) / 2))
  const gap = Math.round(GAP * PER_PIXEL)
  const ground = Math.round(groundReach(width) * PER_PIXEL)
  const far = inside + gap + ground
  for (let c = first; c <= last; c += step) {
    if (c < far || c + far > columns) continue
    const mean = (f64(sums, c + inside) - f64(sums, c - inside)) / (2 * inside)
    const left = (f64(sums, c - inside - gap) - f64(sums, c - far)) / ground
    const right = (f64(sums, c + far) - f64(sums, c + inside + gap)) / ground
    const a = mean - left
    const b = mean - right
    out[at + c] = a > 0 && b > 0 ? Math.min(a, b) : a < 0 && b < 0 ? Math.max(a, b) : 0
  }
}
