import { element } from '../../linear-algebra/element.ts'
import { repeatedObservations } from '../../uncertainty/type-a.ts'

/** One mean of readings that are read to different steps. */
export interface Weighed {
  mean: number
  /** Standard deviation of the mean where that of one reading is 1 and all are independent. */
  spread: number
  /** The share that the readings of each step have in the mean, by the step: they sum to 1. */
  byStep: ReadonlyMap<number, number>
}

/**
 * Weighs each reading by how it scatters and how coarsely it is read, so that a rough one among finer ones counts for
 * little. Those that are read to one step are rounded alike, which no repeating mends: they share that error.
 * @param readings one or more; steps ≥ 0
 * @param s standard deviation of a reading beside its rounding, ≥ 0
 */
export function weighReadings(readings: readonly { value: number; step: number }[], s: number): Weighed {
  const first = element(readings, 0).step
  if (readings.every(({ step }) => step === first)) {
    const { mean, n } = repeatedObservations(readings.map(({ value }) => value))
    return { mean, spread: 1 / Math.sqrt(n), byStep: new Map([[first, 1]]) }
  }
  // Where one is exact, so is the mean of those that are: a step of nothing is taken as next to nothing.
  const weights = readings.map(({ step }) => 1 / Math.max(s ** 2 + step ** 2 / 12, Number.MIN_VALUE ** 0.5))
  const sum = weights.reduce((total, w) => total + w, 0)
  const byStep = new Map<number, number>()
  let [mean, squares] = [0, 0]
  readings.forEach(({ value, step }, i) => {
    const share = element(weights, i) / sum
    mean += share * value
    squares += share ** 2
    byStep.set(step, (byStep.get(step) ?? 0) + share)
  })
  return { mean, spread: Math.sqrt(squares), byStep }
}
