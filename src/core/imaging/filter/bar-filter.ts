/** How far on both sides of the stroke its ground is looked at, and how far from its edge, pixels. */
export const groundReach = (width: number): number => Math.min(Math.max(width, 2.5), 5)
export const GAP = 0.75

/** Places across per pixel. */
export const PER_PIXEL = 2

/** Running integral of the mean grey value of a piece over its place across; where there is no pixel the last holds. */
export function cumulate(
  { total, count }: { total: Float64Array; count: Uint16Array },
  at: number,
  columns: number,
  sums: Float64Array,
): boolean {
  let last = Number.NaN
  for (let b = 0; b < columns && Number.isNaN(last); b++) {
    const n = count[at + b] as number
    if (n > 0) last = (total[at + b] as number) / n
  }
  if (Number.isNaN(last)) return false
  for (let b = 0; b < columns; b++) {
    const n = count[at + b] as number
    if (n > 0) last = (total[at + b] as number) / n
    sums[b + 1] = (sums[b] as number) + last
  }
  return true
}

/** The columns to fill in. */
export interface ColumnRange {
  first: number
  last: number
  step: number
}

/** The bar of a width at each column, from the running integral. */
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
    const mean = ((sums[c + inside] as number) - (sums[c - inside] as number)) / (2 * inside)
    const left = ((sums[c - inside - gap] as number) - (sums[c - far] as number)) / ground
    const right = ((sums[c + far] as number) - (sums[c + inside + gap] as number)) / ground
    const a = mean - left
    const b = mean - right
    out[at + c] = a > 0 && b > 0 ? Math.min(a, b) : a < 0 && b < 0 ? Math.max(a, b) : 0
  }
}
