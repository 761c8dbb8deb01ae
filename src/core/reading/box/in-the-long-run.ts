/**
 * From the log-odds that a reading's looks give to the log-odds that hold: a line with a bend. Found on 1,040 figures in
 * letterings that the network was not trained on (`training/reading/judge-figures.ts`, seeds 5 and 6; `weigh.py`): looks
 * that do not agree tell little, and looks that do tell more than they say. What they tell beyond the bend was found to
 * be 3.9 times what they say; it is taken to be 3, for other letterings are read less well. Below it 0.16 was found, in
 * boxes that all held a figure; it is taken to be 0.4, for not every box does.
 */
const [BEND, AT_BEND, BELOW, ABOVE] = [0.75, 1.504, 0.4, 3]
/** Nothing is surer than this: what nobody thought of happens. */
const SUREST = 0.9995

/** How often a reading of this probability is right. */
export function inTheLongRun(probability: number): number {
  if (probability <= 0) return 0
  const beyond = Math.log(probability / Math.max(1 - probability, 1e-9)) - BEND
  return Math.min(SUREST, 1 / (1 + Math.exp(-(AT_BEND + (beyond < 0 ? BELOW : ABOVE) * beyond))))
}
