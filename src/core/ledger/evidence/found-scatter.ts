import type { Evidence } from '../../job/model/types.ts'
import type { VarianceEstimate } from '../../uncertainty/source.ts'
import type { ScatterPool } from './scatter-pools.ts'

/** How the readings of one set are taken to scatter. */
export interface FoundScatter {
  /** Standard deviation of one reading, mm or radians or mm². */
  s: number
  estimate: VarianceEstimate
  /** Whether it is of all readings with the instrument, of this set alone, or nothing tells. */
  from: 'pool' | 'set' | 'guess'
}

/**
 * How far readings by hand on an old part scatter, as a share of what the instrument may be off by: where a surface is
 * worn, cast or painted, it is about that and somewhat more. Common practice, no source.
 */
const GUESSED = 1.25

/**
 * The scatter of one reading that is guessed where nothing tells of it.
 * @param limit of error of the instrument, 0 where none is stated
 * @param step that it shows, or last graduation of what was written: what was rounded scatters no less
 */
export const guessedScatter = (limit: number, step: number): number =>
  GUESSED * Math.max(limit, step / Math.sqrt(12))

/**
 * The scatter of readings from what a job knows of it. The guess counts as one further square and for no degree of
 * freedom: few readings that happen to agree then know no less than that, and many outweigh it. As a degree of freedom
 * (a prior's), it would make of two readings that scatter four times as much an interval that holds in 77 of 100.
 * @param guess of the scatter of one reading
 */
export function scatterOf(
  evidence: Evidence,
  { squares, dof, estimate, apart }: ScatterPool,
  guess: number,
): FoundScatter | undefined {
  const own = apart.find((one) => one.evidence === evidence)
  if (own !== undefined) {
    return { s: joined(own.squares, own.dof, guess), estimate: { dof: own.dof }, from: 'set' }
  }
  const s = dof === 0 ? guess : joined(squares, dof, guess)
  return s > 0 ? { s, estimate, from: dof === 0 ? 'guess' : 'pool' } : undefined
}

const joined = (squares: number, dof: number, guess: number): number =>
  Math.sqrt((squares + guess ** 2) / dof)
