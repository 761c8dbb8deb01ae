import type { Point } from '../../core/geometry/frames.ts'

/** A line as it was picked: from its first end to its last. */
export type Leg<P extends Point> = readonly [from: P, to: P]

/** Lines that run so nearly alike have no meeting place worth a word. Sine of the angle between them. */
const PARALLEL = 0.02

/** How two lines lie to each other that were picked for the angle between them. */
export interface Legs {
  /** Where they meet, or would if they were drawn on. */
  meet: readonly [x: number, y: number]
  /** The way that each was picked in, unit vectors. */
  ways: readonly [first: Way, second: Way]
  /**
   * Whether the angle between those ways is the one that the two lines enclose as they are drawn; null where they cross,
   * so that all four angles are drawn.
   */
  enclosed: boolean | null
}

type Way = readonly [x: number, y: number]

/** Null where the lines are as good as parallel. */
export function legsOf<P extends Point>(first: Leg<P>, second: Leg<P>): Legs | null {
  const [u, v] = [wayOf(first), wayOf(second)]
  if (u === null || v === null) return null
  const sine = u[0] * v[1] - u[1] * v[0]
  if (Math.abs(sine) < PARALLEL) return null
  const [[px, py], [qx, qy]] = [first[0], second[0]]
  const along = ((qx - px) * v[1] - (qy - py) * v[0]) / sine
  const meet = [px + along * u[0], py + along * u[1]] as const
  const [a, b] = [outwards(first, meet, u), outwards(second, meet, v)]
  return { meet, ways: [u, v], enclosed: a === null || b === null ? null : a === b }
}

function wayOf<P extends Point>([[ax, ay], [bx, by]]: Leg<P>): Way | null {
  const length = Math.hypot(bx - ax, by - ay)
  return length === 0 ? null : [(bx - ax) / length, (by - ay) / length]
}

/** Whether a line goes away from where it meets the other; null where that lies within it. */
function outwards<P extends Point>([from, to]: Leg<P>, meet: Way, way: Way): boolean | null {
  const at = ([x, y]: P): number => (x - meet[0]) * way[0] + (y - meet[1]) * way[1]
  const [a, b] = [at(from), at(to)]
  return a * b < 0 ? null : a + b > 0
}
