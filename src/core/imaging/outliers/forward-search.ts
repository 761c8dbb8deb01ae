/** A reading along a stroke: where along, what is read there, and the standard deviation that noise alone gives it. */
export interface CoursePoint {
  along: number
  reading: number
  sigma: number
}

/** How far a reading is from the course. */
export interface CourseDeviation {
  deviation: number
  /** The deviation in standard deviations: of the noise and of the scatter that the agreeing readings show. */
  z: number
}

/** How many degrees of freedom the noise is worth beside the scatter of the readings. */
const NOISE_DOF = 6
/** Out of this many readings every pair is tried as a start; of more, a part. */
const PAIRS_OF = 12

/**
 * The straight course that most readings agree on, however far off the others are and even if all to the same side, as
 * beside a stain: it starts from the line about which half of them lie closest, and takes in the next nearest one by one
 * for as long as they agree.
 * Sources: Rousseeuw 1984, Least median of squares regression, JASA 79, for the start; Hadi & Simonoff 1993, Procedures
 * for the identification of multiple outliers, JASA 88, for the rest.
 * @param points along the stroke; chosen: which of them may steer the course, three at least
 * @param critical in standard deviations, for the next to agree
 * @returns for each of the points
 */
export function forwardSearch(
  points: readonly CoursePoint[],
  chosen: readonly number[],
  critical: number,
): CourseDeviation[] {
  const some = chosen.flatMap((i) => points[i] ?? [])
  const half = (some.length + 3) >> 1
  let line = closestLine(some, half)
  let size = half
  for (;;) {
    line = lineThrough(nearestTo(some, line, size))
    if (size >= some.length) break
    const next = nearestTo(some, line, size + 1)[size]
    if (next === undefined || Math.abs(awayFrom(line, next)) > critical * sigmaOf(next, line, false)) break
    size++
  }
  const inside = new Set(nearestTo(some, line, size))
  return points.map((p) => {
    const deviation = awayFrom(line, p) * p.sigma
    return { deviation, z: deviation / (p.sigma * sigmaOf(p, line, inside.has(p))) }
  })
}

/** A line through some of the points, in units of their standard deviations. */
interface Line {
  slope: number
  along: number
  reading: number
  /** Sum of weights, and of weights times squared distance along from the middle. */
  weight: number
  spread: number
  /** Of the deviations about it, with that of the noise. */
  scatter: number
}

const awayFrom = (l: Line, p: CoursePoint): number =>
  (p.reading - l.reading - l.slope * (p.along - l.along)) / p.sigma

/** Standard deviation, in units of its own sigma, of a reading's deviation; those outside bear the line's own too. */
function sigmaOf(p: CoursePoint, l: Line, inside: boolean): number {
  if (inside) return l.scatter
  const own = 1 / l.weight + (l.spread > 0 ? (p.along - l.along) ** 2 / l.spread : 0)
  return l.scatter * Math.sqrt(1 + own / p.sigma ** 2)
}

function lineThrough(points: readonly CoursePoint[]): Line {
  let weight = 0
  let s = 0
  let t = 0
  for (const p of points) {
    const w = 1 / p.sigma ** 2
    weight += w
    s += w * p.along
    t += w * p.reading
  }
  const [along, reading] = [s / weight, t / weight]
  let spread = 0
  let product = 0
  for (const p of points) {
    const w = 1 / p.sigma ** 2
    spread += w * (p.along - along) ** 2
    product += w * (p.along - along) * (p.reading - reading)
  }
  const line = { slope: spread > 0 ? product / spread : 0, along, reading, weight, spread, scatter: 1 }
  const squares = points.reduce((sum, p) => sum + awayFrom(line, p) ** 2, 0)
  line.scatter = Math.sqrt((NOISE_DOF + squares) / (NOISE_DOF + Math.max(points.length - 2, 0)))
  if (points.length > 2) line.scatter = Math.max(line.scatter, 1)
  return line
}

function nearestTo(points: readonly CoursePoint[], line: Line, count: number): CoursePoint[] {
  return [...points].sort((a, b) => Math.abs(awayFrom(line, a)) - Math.abs(awayFrom(line, b))).slice(0, count)
}

/** Of the lines through two of the points the one about which so many lie closest. */
function closestLine(points: readonly CoursePoint[], count: number): Line {
  const step = Math.max(1, Math.ceil(points.length / PAIRS_OF))
  let best = lineThrough(points)
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < points.length; i += step) {
    for (let j = i + 1; j < points.length; j += step) {
      const line = lineThrough([...points.slice(i, i + 1), ...points.slice(j, j + 1)])
      const away = points.map((p) => Math.abs(awayFrom(line, p))).sort((a, b) => a - b)
      const squares = away.slice(0, count).reduce((sum, a) => sum + a * a, 0)
      if (squares >= least) continue
      least = squares
      best = line
    }
  }
  return best
}
