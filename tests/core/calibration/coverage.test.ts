import { describe, expect, it } from 'vitest'
import { calibrate } from '../../../src/core/calibration/calibrate.ts'
import type { MappingKind, Measure } from '../../../src/core/job/model/types.ts'
import type { Feature } from '../../../src/core/measuring/features/feature-of-mark.ts'
import { measureFeatures } from '../../../src/core/measuring/measure-features.ts'
import { expand } from '../../../src/core/uncertainty/coverage.ts'
import { randomStream } from '../../../src/core/uncertainty/random.ts'
import { type SimulatedMeasure, type SimulatedSheet, simulateSheet, TRUE_VALUES } from './simulated-sheet.ts'

const SHEETS = 2000
const MAPPING_KINDS: MappingKind[] = ['uniform', 'two-axis', 'affine', 'projective']

const TAKEN: Record<SimulatedMeasure, [Measure, (s: SimulatedSheet) => Feature[]]> = {
  distance: ['distance', (s) => [s.point('p'), s.point('q')]],
  'spacing of lines': ['spacing', (s) => [s.line('a'), s.line('b')]],
  'spacing of a point': ['spacing', (s) => [s.line('a'), s.point('q')]],
  diameter: ['diameter', (s) => [s.circle('k')]],
  radius: ['radius', (s) => [s.circle('l')]],
  centres: ['centres', (s) => [s.circle('k'), s.circle('l')]],
  angle: ['angle', (s) => [s.line('a'), s.line('c')]],
  run: ['run', (s) => [s.path('open')]],
  area: ['area', (s) => [s.path('closed')]],
}
const MEASURE_NAMES = Object.keys(TAKEN) as SimulatedMeasure[]

const percent = (held: number, n: number): string => ((100 * held) / n).toFixed(1).padStart(5)

describe('the 95 % interval holds the truth as often as it says', () => {
  // The seed is the day of the first commit; no other was tried.
  const random = randomStream(20261125)
  const held = new Map<string, number>()
  const count = new Map<string, number>()
  const lines: string[] = [
    `coverage in %, ${SHEETS} sheets a line   ${MEASURE_NAMES.map((m) => m.slice(0, 11).padStart(12)).join('')}`,
  ]

  for (const kind of MAPPING_KINDS) {
    for (const references of ['minimum', 'many'] as const) {
      for (const draughting of [0, 0.26]) {
        const here = new Map<SimulatedMeasure, number>()
        for (let i = 0; i < SHEETS; i++) {
          const sheet = simulateSheet({ kind, references, draughting, sigma: 1 }, random)
          const calibration = calibrate(sheet.view, sheet.sizes)
          for (const name of MEASURE_NAMES) {
            const [measure, take] = TAKEN[name]
            const x = measureFeatures(calibration, measure, take(sheet))
            if (Math.abs(x.value - TRUE_VALUES[name]) <= expand(x).U)
              here.set(name, (here.get(name) ?? 0) + 1)
          }
        }
        const label = `${kind.padEnd(10)} ${references.padEnd(7)} ${draughting === 0 ? 'undraughted' : 'draughted  '}`
        lines.push(
          `${label}        ${MEASURE_NAMES.map((m) => percent(here.get(m) ?? 0, SHEETS).padStart(12)).join('')}`,
        )
        for (const name of MEASURE_NAMES) {
          const cell = `${kind} with ${name}`
          held.set(cell, (held.get(cell) ?? 0) + (here.get(name) ?? 0))
          count.set(cell, (count.get(cell) ?? 0) + SHEETS)
        }
      }
    }
  }
  const total = [...held.values()].reduce((s, v) => s + v, 0)
  const cases = [...count.values()].reduce((s, v) => s + v, 0)
  lines.push(`all cases: ${percent(total, cases)} % of ${cases}`)
  console.log(lines.join('\n'))

  it('in 94 to 96 % of all cases', () => {
    expect(total / cases).toBeGreaterThan(0.94)
    expect(total / cases).toBeLessThan(0.96)
  })

  for (const [cell, n] of count) {
    it(`within 1.5 points of 95 % for ${cell}`, () => {
      expect(Math.abs((held.get(cell) ?? 0) / n - 0.95)).toBeLessThanOrEqual(0.015)
    })
  }
})
