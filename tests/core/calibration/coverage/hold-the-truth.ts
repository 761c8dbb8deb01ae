import { beforeAll, describe, expect, it } from 'vitest'
import { calibrate } from '../../../../src/core/calibration/calibrate.ts'
import type { MappingKind, Measure } from '../../../../src/core/job/model/types.ts'
import type { Feature } from '../../../../src/core/measuring/features/feature-of-mark.ts'
import { measureFeatures } from '../../../../src/core/measuring/measure-features.ts'
import { expand } from '../../../../src/core/uncertainty/coverage.ts'
import { type RandomStream, randomStream } from '../../../../src/core/uncertainty/random.ts'
import {
  type SheetPlan,
  type SimulatedMeasure,
  type SimulatedSheet,
  simulateSheet,
  TRUE_VALUES,
} from '../simulated-sheet.ts'

/**
 * Of each plan of a mapping. A measure whose U is a tenth too small holds the truth in 92.2 % and fails with a probability
 * of 0.9987 on four plans of so many, one that is as it should be with 0.00001; a U that is a twentieth too small for all
 * of them holds in 93.7 %, outside what is asked of all cases.
 */
const SHEETS = 1000

const TAKEN: Record<SimulatedMeasure, [Measure, (s: SimulatedSheet) => Feature[]]> = {
  distance: ['distance', (s) => [s.point('p'), s.point('q')]],
  'spacing of lines': ['spacing', (s) => [s.line('a'), s.line('b')]],
  'spacing of a point': ['spacing', (s) => [s.line('a'), s.point('q')]],
  diameter: ['diameter', (s) => [s.circle('k')]],
  radius: ['radius', (s) => [s.circle('l')]],
  centres: ['centres', (s) => [s.circle('k'), s.circle('l')]],
  'slot width': ['slot-width', (s) => [s.circle('k'), s.circle('l')]],
  'slot length': ['slot-length', (s) => [s.circle('k'), s.circle('l')]],
  angle: ['angle', (s) => [s.line('a'), s.line('c')]],
  run: ['run', (s) => [s.path('open')]],
  area: ['area', (s) => [s.path('closed')]],
}
const MEASURE_NAMES = Object.keys(TAKEN) as SimulatedMeasure[]

/** How often the interval of each measure held the truth. */
type Held = Record<SimulatedMeasure, number>

const none = (): Held => Object.fromEntries(MEASURE_NAMES.map((name) => [name, 0])) as Held

/** The plans of each mapping. */
const PLANS = (['minimum', 'many'] as const).flatMap((references) =>
  [0, 0.26].map((draughting) => ({ references, draughting, sigma: 1 })),
)

function heldOn(plan: SheetPlan, random: RandomStream): Held {
  const held = none()
  for (let i = 0; i < SHEETS; i++) {
    const sheet = simulateSheet(plan, random)
    const calibration = calibrate(sheet.view, sheet.sizes)
    for (const name of MEASURE_NAMES) {
      const [measure, take] = TAKEN[name]
      const x = measureFeatures(calibration, measure, take(sheet))
      if (Math.abs(x.value - TRUE_VALUES[name]) <= expand(x).U) held[name]++
    }
  }
  return held
}

const percent = (held: number, n: number): string => ((100 * held) / n).toFixed(1).padStart(5)
const sum = (values: readonly number[]): number => values.reduce((s, v) => s + v, 0)

/**
 * Tries that the 95 % interval of every measure through a mapping holds the truth as often as it says, on sheets whose
 * errors are drawn as their sigmas say.
 * @param seed the day of the first commit and the place of the mapping in its list; no other was tried
 */
export function holdsTheTruth(kind: MappingKind, seed: number): void {
  describe(`the 95 % interval through a ${kind} mapping holds the truth as often as it says`, () => {
    const cases = PLANS.length * SHEETS
    const held = none()

    beforeAll(() => {
      const random = randomStream(seed)
      const lines = [
        `coverage in %, ${SHEETS} sheets a line   ${MEASURE_NAMES.map((m) => m.slice(0, 11).padStart(12)).join('')}`,
      ]
      for (const plan of PLANS) {
        const here = heldOn({ kind, ...plan }, random)
        for (const name of MEASURE_NAMES) held[name] += here[name]
        const label = `${kind.padEnd(10)} ${plan.references.padEnd(7)} ${plan.draughting === 0 ? 'undraughted' : 'draughted  '}`
        lines.push(
          `${label}        ${MEASURE_NAMES.map((m) => percent(here[m], SHEETS).padStart(12)).join('')}`,
        )
      }
      const all = cases * MEASURE_NAMES.length
      lines.push(`all cases: ${percent(sum(Object.values(held)), all)} % of ${all}`)
      console.log(lines.join('\n'))
    }, 240_000)

    it('in 94 to 96 % of all cases', () => {
      const share = sum(Object.values(held)) / (cases * MEASURE_NAMES.length)
      expect(share).toBeGreaterThan(0.94)
      expect(share).toBeLessThan(0.96)
    })

    it.each(MEASURE_NAMES)('for %s within 1.5 points of 95 in 100', (name) => {
      expect(Math.abs(held[name] / cases - 0.95)).toBeLessThanOrEqual(0.015)
    })
  })
}
