import { BASIS, type ScoreContributions, VALUES } from './score-contributions.ts'

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
  const [count, residual, centre, width] = [0, 1, 2, 3].map(() => new Float64Array(SIZE)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ]
  const projection = Array.from({ length: BASIS }, () => new Float64Array(SIZE))
  return { rings: 0, count, residual, centre, width, projection }
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
  let [count, residual, centre, width] = [0, 0, 0, 0]
  let [p0, p1, p2, p3, p4, p5] = [0, 0, 0, 0, 0, 0]
  for (let i = 0; i < n; i++) {
    const j = (index[(place[i] as number) + step] as number) - 1
    if (j < 0) continue
    const a = i * VALUES
    const b = j * VALUES
    count++
    residual += (values[a] as number) * (values[b] as number)
    const c = (values[a + 5] as number) * (values[b + 5] as number)
    const w = (values[a + 6] as number) * (values[b + 6] as number)
    centre += c
    width += w
    if (group[i] !== group[j]) continue
    p0 += (values[a + 1] as number) * (values[b + 1] as number)
    p1 += (values[a + 2] as number) * (values[b + 2] as number)
    p2 += (values[a + 3] as number) * (values[b + 3] as number)
    p3 += (values[a + 4] as number) * (values[b + 4] as number)
    p4 += c
    p5 += w
  }
  sums.count[lag] = count
  sums.residual[lag] = residual
  sums.centre[lag] = centre
  sums.width[lag] = width
  const projected = [p0, p1, p2, p3, p4, p5]
  sums.projection.forEach((p, b) => {
    p[lag] = projected[b] as number
  })
}
