import { recalibrate } from '../calibration/calibrate.ts'
import { CalibrationError } from '../calibration/calibration-error.ts'
import { parseFormula } from '../formula/formula.ts'
import { GeometryError } from '../geometry/geometry-error.ts'
import type { Job } from '../job/model/types.ts'
import { remeasure } from '../measuring/measure-features.ts'
import { expand } from '../uncertainty/coverage.ts'
import { type Draw, newDraw, realise } from '../uncertainty/draws.ts'
import {
  compareWithFirstOrder,
  type MonteCarloResult,
  monteCarlo,
  type Verdict,
} from '../uncertainty/monte-carlo.ts'
import { exact } from '../uncertainty/uncertain.ts'
import { meanWeights } from '../uncertainty/weighted-mean.ts'
import { ScantlingError } from '../words/scantling-error.ts'
import type { Decision } from './adopt.ts'
import { type Assessment, assess } from './assessment.ts'
import type { Weighed } from './evidence/evaluated-evidence.ts'
import { displayFactor } from './table/display-units.ts'

/** A row of the table, propagated by Monte Carlo beside first order. In the table's units. */
export interface SimulatedRow {
  name: string
  firstOrder: { value: number; u: number; U: number }
  simulated: MonteCarloResult
  verdict: Verdict
  /** Further trials that gave no value: contradictory references, or a formula without a value. */
  failures: number
}

type Which = 'adopted' | 'compared'

const MOST_FAILURES = 10_000

/**
 * Draws every pick, drawn feature, stated size and reading anew, calibrates and measures again from them,
 * and compares the interval with the first-order one.
 * @param options trials (default 10 000) and seed
 * @throws ScantlingError when there is no such row or its value is exact
 * Source: JCGM 101:2008, clauses 7 and 8.
 */
export function simulateRow(
  job: Job,
  name: string,
  options: { trials?: number; seed: number; digits?: 1 | 2 },
): SimulatedRow {
  const assessment = assess(job)
  const row = assessment.dimensions.get(name)
  if (row === undefined) throw new ScantlingError(`There is no dimension ${name} to simulate.`)
  const { adopted } = row.decision
  if (adopted === null) throw new ScantlingError(`Dimension ${name} has no value to simulate.`)
  const { u, U } = expand(adopted)
  if (u === 0) {
    throw new ScantlingError(`Dimension ${name} is taken as exact, so there is nothing to simulate.`)
  }
  const f = displayFactor(row.dimension.kind, job.unit)
  let failures = 0
  const trial = (draw: Draw): number | null => {
    try {
      const value = new Trial(assessment, draw).valueOf(name, 'adopted') * f
      return Number.isFinite(value) ? value : null
    } catch (error) {
      if (error instanceof CalibrationError || error instanceof GeometryError) return null
      throw error
    }
  }
  const simulated = monteCarlo(
    (random) => {
      for (;;) {
        const value = trial(newDraw(random))
        if (value !== null) return value
        failures++
        if (failures > MOST_FAILURES) {
          throw new ScantlingError(
            `Dimension ${name} has no value in most trials: its evidence is too uncertain to simulate.`,
          )
        }
      }
    },
    { trials: options.trials ?? 10_000, seed: options.seed },
  )
  const firstOrder = { value: adopted.value * f, u: u * f, U: U * f }
  const verdict = compareWithFirstOrder(firstOrder, simulated, options.digits)
  return { name, firstOrder, simulated, verdict, failures }
}

/** The whole job under one realisation of its sources; views and dimensions are worked out when asked for. */
class Trial {
  private readonly thetas = new Map<string, number[]>()
  private readonly values = new Map<string, number>()

  constructor(
    private readonly assessment: Assessment,
    private readonly draw: Draw,
  ) {}

  valueOf(name: string, which: Which): number {
    const key = `${which} ${name}`
    const known = this.values.get(key)
    if (known !== undefined) return known
    const value = this.decided(this.dimension(name).decision, which)
    this.values.set(key, value)
    return value
  }

  private decided({ from, excess }: Decision, which: Which): number {
    if (from.length === 1) return this.evidence(from[0] as Weighed, which)
    const compared = from.flatMap((w) => (w.compared === null ? [] : [w.compared]))
    const weights = meanWeights(compared)
    const widened = excess === undefined ? 0 : realise(excess, this.draw)
    return from.reduce((sum, w, i) => sum + (weights[i] as number) * this.evidence(w, 'compared'), widened)
  }

  private dimension(name: string) {
    const found = this.assessment.dimensions.get(name)
    if (found === undefined) throw new ScantlingError(`There is no dimension ${name}.`)
    return found
  }

  private evidence({ evidence, adopted, compared }: Weighed, which: Which): number {
    if (evidence.basis === 'derived') {
      return parseFormula(evidence.formula).value((name) => exact(this.valueOf(name, which))).value
    }
    if (evidence.basis !== 'scaled') {
      const x = which === 'adopted' ? adopted : compared
      return x === null ? Number.NaN : realise(x, this.draw)
    }
    const calibration = this.assessment.views.get(evidence.view)?.calibration
    if (calibration === undefined || calibration === null) return Number.NaN
    const known = this.thetas.get(evidence.view)
    const theta = known ?? recalibrate(calibration, this.draw)
    this.thetas.set(evidence.view, theta)
    return remeasure(
      calibration,
      theta,
      evidence.measure,
      evidence.marks.map(this.assessment.featureOf),
      this.draw,
    )
  }
}
