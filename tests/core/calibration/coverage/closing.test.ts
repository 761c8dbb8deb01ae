import { describe, expect, it } from 'vitest'
import type { MappingKind } from '../../../../src/core/job/model/types.ts'
import { MAPPINGS } from '../../../../src/core/mapping/mappings.ts'
import { randomStream } from '../../../../src/core/uncertainty/random.ts'
import { CLOSING_CASES } from '../closing-cases.ts'
import { closingTrials } from '../closing-trials.ts'

const KINDS = Object.keys(MAPPINGS) as MappingKind[]
/** Of each case with each mapping, undraughted and draughted: 480 a case. The rest is tried by `tests/bench/closings.ts`. */
const SHEETS = 60

describe('figured sizes that share marks and close on themselves', () => {
  it.each(CLOSING_CASES)('%s: fit, cover and count as they should with every mapping', (name) => {
    const random = randomStream(20261130)
    const all = KINDS.flatMap((kind) =>
      [0, 0.13].map((draughting) => closingTrials(name, kind, draughting, SHEETS, random)),
    )
    const sum = (of: keyof (typeof all)[number]): number => all.reduce((s, one) => s + one[of], 0)
    const n = sum('sheets')
    const within = (share: number, of: number): number => 3 * Math.sqrt((share * (1 - share)) / of)
    expect(sum('refused')).toBe(0)
    expect(sum('wrongDof')).toBe(0)
    expect(sum('open')).toBe(0)
    expect(Math.abs(sum('misfit') / n - 0.05)).toBeLessThan(within(0.05, n))
    // The two dimensions of a sheet share its calibration, so that they do not count twice.
    expect(Math.abs(sum('held') / (2 * n) - 0.95)).toBeLessThan(within(0.05, n))
  })
})
