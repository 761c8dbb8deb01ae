import { type Calibration, recalibrate } from '../calibration/calibrate.ts'
import { CalibrationError } from '../calibration/calibration-error.ts'
import { GeometryError } from '../geometry/geometry-error.ts'
import type { Job } from '../job/model/types.ts'
import { remeasure } from '../measuring/measure-features.ts'
import { expand } from '../uncertainty/coverage.ts'
import { type Draw, newDraw, underDraw } from '../uncertainty/draws.ts'
import {
  compareWithFirstOrder,
  type MonteCarloResult,
  monteCarlo,
  type Verdict,
} from '../uncertainty/monte-carlo.ts'
import { CoreError } from '../words/core-error.ts'
import { reason } from '../words/core-words.ts'
import { decidedValue } from './adoption/adopt.ts'
import { type Assessment, assess } from './assessment/assessment.ts'
import type { Valuation } from './evidence/valuation.ts'
import { displayFactor } from './units/display-units.ts'

/** A row of the table, propagated by Monte Carlo beside first order. In the table's units. */
export interface SimulatedRow {
  name: string
  firstOrder: { value: number; u: number; U: number }
  simulated: MonteCarloResult
  verdict: Verdict
  /** Further trials that gave no value: contradictory references, or a formula without a value. */
  failures: number
}

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
  if (row === undefined) throw new CoreError(reason('simulation.no-such-dimension', { name }))
  const { adopted } = row.decision
  if (adopted === null) throw new CoreError(reason('simulation.without-value', { name }))
  const { u, U } = expand(adopted)
  if (u === 0) {
    throw new CoreError(reason('simulation.of-exact-value', { name }))
  }
  const f = displayFactor(row.dimension.kind, job.unit)
  let failures = 0
  const trial = (draw: Draw): number | null => {
    try {
      const value = underOneDraw(assessment, draw).dimension(name, 'adopted') * f
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
          throw new CoreError(reason('simulation.mostly-without-value', { name }))
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
function underOneDraw({ dimensions }: Assessment, draw: Draw): Valuation<number> {
  const arithmetic = underDraw(draw)
  const thetas = new Map<Calibration, number[]>()
  const values = { adopted: new Map<string, number>(), compared: new Map<string, number>() }
  const within: Valuation<number> = {
    arithmetic,
    measure(calibration, measure, features) {
      const theta = thetas.get(calibration) ?? recalibrate(calibration, draw)
      thetas.set(calibration, theta)
      return remeasure(calibration.view, theta, measure, features, draw)
    },
    dimension(name, which) {
      const known = values[which].get(name)
      if (known !== undefined) return known
      const row = dimensions.get(name)
      if (row === undefined) throw new RangeError(`There is no dimension ${name}.`)
      const value = decidedValue(row.decision, which, arithmetic, ({ workOut }, which) =>
        workOut === null ? Number.NaN : workOut(which, within),
      )
      values[which].set(name, value)
      return value
    },
  }
  return within
}
