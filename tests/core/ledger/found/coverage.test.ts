import { describe, expect, it } from 'vitest'
import { randomStream } from '../../../../src/core/uncertainty/random.ts'
import { tally } from './readings-drawn.ts'

/** Fewer of so many jobs hold the truth only once in a thousand cells, where 94 of 100 are to. */
const fewest = (jobs: number): number => 0.94 * jobs - 3.1 * Math.sqrt(jobs * 0.94 * 0.06)
/** More are in dispute only once in a thousand, where 6 of 100 are to be at most. */
const most = (jobs: number): number => 0.06 * jobs + 3.1 * Math.sqrt(jobs * 0.06 * 0.94)

/** Against 0.05 mm that the caliper may be off by, and 0.02 mm that it shows. */
const SCATTERS = [0, 0.02, 0.05, 0.2]

describe('the ± of what was read on the original holds the truth', () => {
  it.each([2, 3, 5])('of %i readings that are alone in their job', (n) => {
    for (const scatter of SCATTERS) {
      const { held } = tally({ n, scatter, others: 0, off: 'normal' }, 500, randomStream(n))
      expect(held, `scatter ${scatter}`).toBeGreaterThan(fewest(500))
    }
  })

  it.each([2, 3, 5])('of %i readings beside nine other sizes, and is no wider than it must be', (n) => {
    for (const scatter of SCATTERS) {
      const { held, U } = tally({ n, scatter, others: 9, off: 'normal' }, 150, randomStream(10 + n))
      expect(held, `scatter ${scatter}`).toBeGreaterThan(fewest(150))
      const known = 1.96 * Math.sqrt(0.05 ** 2 / 3 + 0.02 ** 2 / 12 + (scatter ** 2 + 0.02 ** 2 / 12) / n)
      expect(U / known, `scatter ${scatter}`).toBeLessThan(1.2)
    }
  })

  it('of one reading, by what the other sizes tell of the caliper', () => {
    for (const scatter of SCATTERS) {
      const drawn = { n: 2, ofFirst: 1, scatter, others: 9, off: 'normal' } as const
      const { held } = tally(drawn, 150, randomStream(20))
      expect(held, `scatter ${scatter}`).toBeGreaterThan(fewest(150))
    }
  })
})

describe('single readings of one size with one caliper', () => {
  it('are seldom in dispute where the job tells how it scatters, or they scatter no more than its limit', () => {
    for (const [scatter, others] of [
      [0.05, 0],
      [0.05, 9],
      [0.2, 9],
    ] as const) {
      const drawn = { n: 2, ofFirst: 1, sets: 2, scatter, others, off: 'within' } as const
      const { disputed } = tally(drawn, 200, randomStream(30))
      expect(disputed, `scatter ${scatter}`).toBeLessThan(most(200))
    }
  })
})
