import { describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { simulateRow } from '../../../src/core/ledger/simulate-row.ts'
import { derived, dimension, found, point, printed, rowOf, scaled, smallJob } from './small-job.ts'

const job = smallJob({
  references: [{ id: 'R1', kind: 'distance', marks: ['A', 'B'], size: '20"', u: '0.02 in' }],
  marks: [
    point('D', pixel(400, 900)),
    point('E', pixel(2000, 1500)),
    point('F', pixel(400, 900.5)),
    point('G', pixel(401, 900)),
  ],
  dimensions: [
    dimension('long', [scaled(['D', 'E'])]),
    dimension('product', [derived('long ^ 2 * pi / 4')], { kind: 'area' }),
    dimension('tiny', [scaled(['F', 'G'])]),
    dimension('both', [scaled(['D', 'E']), found(['11.40 in', '11.42 in', '11.38 in'])], { adopt: 'mean' }),
    dimension('figure', [printed('3"')]),
    dimension('figure_mean', [printed('3"')], { adopt: 'mean' }),
  ],
})

describe('a row by Monte Carlo', () => {
  it.each(['long', 'product'])('confirms first order for %s, whose errors are small beside it', (name) => {
    const row = simulateRow(job, name, { seed: 7, trials: 20_000 })
    expect(row.simulated.u / row.firstOrder.u).toBeCloseTo(1, 1)
    expect(row.verdict.firstOrderIsGoodEnough).toBe(true)
    expect(row.failures).toBe(0)
    expect(rowOf(job, name).U).toBeCloseTo(row.firstOrder.U, 12)
  })

  it('draws a mean of one figure as the table takes it, with its graduation', () => {
    const { firstOrder, simulated } = simulateRow(job, 'figure_mean', { seed: 7, trials: 20_000 })
    expect(firstOrder.u).toBe(rowOf(job, 'figure_mean').u)
    expect(simulated.u / firstOrder.u).toBeCloseTo(1, 1)
  })

  it('denies it for a length that is smaller than its picking error', () => {
    expect(simulateRow(job, 'tiny', { seed: 7, trials: 20_000 }).verdict.firstOrderIsGoodEnough).toBe(false)
  })

  it('draws Type A evidence from Student’s t, which is wider than its s', () => {
    const readings = smallJob({
      dimensions: [dimension('bore', [found(['1.010 in', '1.090 in', '1.050 in'])])],
    })
    const row = simulateRow(readings, 'bore', { seed: 3, trials: 40_000 })
    expect((row.simulated.high - row.simulated.low) / 2 / row.firstOrder.U).toBeCloseTo(1, 1)
  })

  it('gives the same for the same seed, and another for another', () => {
    const run = (seed: number) => simulateRow(job, 'both', { seed, trials: 500 }).simulated
    expect(run(1)).toEqual(run(1))
    expect(run(1)).not.toEqual(run(2))
  })

  it('says in words why there is nothing to simulate', () => {
    expect(() => simulateRow(job, 'figure', { seed: 1 })).toThrow(/exact/)
    expect(() => simulateRow(job, 'nothing', { seed: 1 })).toThrow(/no dimension nothing/)
  })
})
