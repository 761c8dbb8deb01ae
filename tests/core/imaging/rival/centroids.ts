import type { Strip } from './strip.ts'

/** Where the stroke is looked for in a column, pixels across; undefined for columns that are not used. */
export type Expected = (column: number) => number | undefined

export interface Centroid {
  column: number
  across: number
}

const middleOf = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN

const inked = (v: number, threshold: number, dark: boolean) => (dark ? v < threshold : v > threshold)

/** The usual number of inked pixels of a column near the middle. */
export function usualWidth(
  { columns, half, values, threshold }: Strip,
  dark: boolean,
  used: Expected,
): number {
  const counts: number[] = []
  for (let c = 0; c < columns; c++) {
    if (used(c) === undefined) continue
    let n = 0
    for (let t = -half; t <= half; t++)
      if (inked(values[(t + half) * columns + c] as number, threshold, dark)) n++
    counts.push(n)
  }
  return Math.min(14, Math.max(1, middleOf(counts)))
}

/** Where a bar of this width stands out most from all columns averaged, pixels across. */
export function strongest(
  { columns, half, values }: Strip,
  dark: boolean,
  width: number,
  used: Expected,
): number {
  const rows = 2 * half + 1
  const mean = new Array<number>(rows).fill(0)
  for (let row = 0; row < rows; row++) {
    for (let c = 0; c < columns; c++) {
      if (used(c) !== undefined) mean[row] = (mean[row] ?? 0) + (values[row * columns + c] as number)
    }
  }
  const reach = Math.round(width / 2)
  let best = 0
  let most = Number.NEGATIVE_INFINITY
  for (let row = reach; row < rows - reach; row++) {
    if (Math.abs(row - half) > 8) continue
    let sum = 0
    for (let k = -reach; k <= reach; k++) sum += (dark ? -1 : 1) * (mean[row + k] ?? 0)
    if (sum > most) {
      most = sum
      best = row - half
    }
  }
  return best
}

/**
 * Grey-weighted centroid of each column within half of the width and 2.5 px of where the stroke is expected, the ground
 * taken off as seen just outside; columns that show less than half of the usual ink are dropped.
 */
export function centroids(
  { columns, half, values }: Strip,
  dark: boolean,
  width: number,
  expected: Expected,
): Centroid[] {
  const reach = width / 2 + 2.5
  const found: (Centroid & { ink: number })[] = []
  for (let c = 0; c < columns; c++) {
    const at = expected(c)
    if (at === undefined) continue
    const outside: number[] = []
    let ink = 0
    let moment = 0
    for (let t = -half; t <= half; t++) {
      const far = Math.abs(t - at)
      if (far > reach && far < reach + 4) outside.push(values[(t + half) * columns + c] as number)
    }
    const ground = outside.reduce((sum, v) => sum + v, 0) / Math.max(outside.length, 1)
    for (let t = -half; t <= half; t++) {
      if (Math.abs(t - at) > reach) continue
      const v = (dark ? -1 : 1) * ((values[(t + half) * columns + c] as number) - ground)
      ink += v
      moment += v * t
    }
    if (ink > 0 && Math.abs(moment / ink - at) < reach) found.push({ column: c, across: moment / ink, ink })
  }
  const usual = middleOf(found.map((f) => f.ink))
  return found.filter((f) => f.ink > usual / 2 && f.ink < usual * 2)
}

/** Every inked pixel near where the stroke is expected. */
export function inkedPixels(strip: Strip, dark: boolean, width: number, expected: Expected): Centroid[] {
  const { columns, half, values, threshold } = strip
  const found: Centroid[] = []
  for (let c = 0; c < columns; c++) {
    const at = expected(c)
    if (at === undefined) continue
    for (let t = -half; t <= half; t++) {
      if (Math.abs(t - at) > width / 2 + 2.5) continue
      if (inked(values[(t + half) * columns + c] as number, threshold, dark))
        found.push({ column: c, across: t })
    }
  }
  return found
}
