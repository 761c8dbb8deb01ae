import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { BASIS, type ScoreContributions, VALUES } from './score-contributions.ts'

const { f64, i32 } = elements

/** Lags are followed to this many pixels, both ways. */
export const LAGS = 8
const SIDE = 2 * LAGS + 1
const SIZE = SIDE * (LAGS + 1)
/** The lag of a pixel with itself. */
export const NO_LAG = LAGS

/** The lags of each ring (the greater of both ways, pixels), each pair of pixels once: of its own row only to the right. */
export const RINGS: readonly (readonly number[])[] = Array.from({ length: LAGS + 1 }, (_, ring) =>
  Array.from({ length: SIZE }, (__, lag) => lag).filter(
    (lag) => ringOf(lag) === ring && !(lag < SIDE && lag < NO_LAG),
  ),
)

function ringOf(lag: number): number {
  return Math.max(Math.abs((lag % SIDE) - LAGS), Math.floor(lag / SIDE))
}

/** Sums over all pairs of pixels at each lag of the rings counted so far. */
export interface AutocovarianceSums {
  /** Rings counted. */
  rings: number
  count: Float64Array
  residual: Float64Array
  centre: Float64Array
  width: Float64Array
  /** By direction that the fit takes off. */
  projection: Float64Array[]
}

export const noSums = (): AutocovarianceSums => {
  const none = () => new Float64Array(SIZE)
  const projection = Array.from({ length: BASIS }, none)
  return { rings: 0, count: none(), residual: none(), centre: none(), width: none(), projection }
}

/** Counts on to so many rings. */
export function countRings(pulls: ScoreContributions, sums: AutocovarianceSums, rings: number): void {
  for (let ring = sums.rings; ring < rings; ring++)
    for (const lag of RINGS[ring] ?? []) addLag(pulls, lag, sums)
  sums.rings = Math.max(sums.rings, rings)
}

function addLag(
  { n, values, group, index, place, stride }: ScoreContributions,
  lag: number,
  sums: AutocovarianceSums,
): void {
  const step = Math.floor(lag / SIDE) * stride + (lag % SIDE) - LAGS
  let count = 0
  let residual = 0
  let centre = 0
  let width = 0
  let p0 = 0
  let p1 = 0
  let p2 = 0
  let p3 = 0
  let p4 = 0
  let p5 = 0
  let p6 = 0
  let p7 = 0
  for (let i = 0; i < n; i++) {
    const j = i32(index, i32(place, i) + step) - 1
    if (j < 0) continue
    const a = i * VALUES
    const b = j * VALUES
    count++
    residual += f64(values, a) * f64(values, b)
    const c = f64(values, a + 5) * f64(values, b + 5)
    const w = f64(values, a + 6) * f64(values, b + 6)
    centre += c
    width += w
    if (group[i] !== group[j]) continue
    p0 += f64(values, a + 1) * f64(values, b + 1)
    p1 += f64(values, a + 2) * f64(values, b + 2)
    p2 += f64(values, a + 3) * f64(values, b + 3)
    p3 += f64(values, a + 4) * f64(values, b + 4)
    p4 += c
    p5 += w
    p6 += f64(values, a + 7) * f64(values, b + 7)
    p7 += f64(values, a + 8) * f64(values, b + 8)
  }
  sums.count[lag] = count
  sums.residual[lag] = residual
  sums.centre[lag] = centre
  sums.width[lag] = width
  const projected = [p0, p1, p2, p3, p4, p5, p6, p7]
  sums.projection.forEach((p, b) => {
    p[lag] = projected[b] ?? 0
  })
}
