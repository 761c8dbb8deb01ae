/**
 * What the log-odds of a reading are multiplied by, and what is added, so that of all readings of one probability as many
 * are right: found on letterings that the network was not trained on (`training/reading/weigh.py`).
 */
const [SLOPE, SHIFT] = [0.885, 0.866]
/** Nothing is surer than this: what nobody thought of happens. */
const SUREST = 0.9995

/** How often a reading of this probability is right. */
export function inTheLongRun(probability: number): number {
  if (probability <= 0) return 0
  const odds = Math.log(probability / Math.max(1 - probability, 1e-9))
  return Math.min(SUREST, 1 / (1 + Math.exp(-(SLOPE * odds + SHIFT))))
}
