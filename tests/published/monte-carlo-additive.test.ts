import { describe, expect, it } from 'vitest'
import { expand } from '../../src/core/uncertainty/coverage.ts'
import { FIRST_ORDER } from '../../src/core/uncertainty/first-order.ts'
import { compareWithFirstOrder, monteCarlo } from '../../src/core/uncertainty/monte-carlo.ts'
import type { RandomStream } from '../../src/core/uncertainty/random.ts'
import { measured } from '../../src/core/uncertainty/uncertain.ts'

const { add } = FIRST_ORDER

const TRIALS = 400_000
const SEED = 1893

/** A rectangular quantity of mean 0 and standard deviation u. */
const rectangular = (random: RandomStream, u = 1): number => u * Math.sqrt(3) * (2 * random.uniform() - 1)

function firstOrder(...us: number[]) {
  const y = us.map((u, i) => measured(0, u, `X${i + 1}`)).reduce(add)
  const { u, U } = expand(y)
  return { value: y.value, u, U }
}

describe('JCGM 101:2008 9.2, the additive model Y = X1 + X2 + X3 + X4', () => {
  it('9.2.2, four normal quantities of unit u: u 2.00 and ±3.92 at 95 %, first order confirmed', () => {
    const simulated = monteCarlo((r) => r.normal() + r.normal() + r.normal() + r.normal(), {
      trials: TRIALS,
      seed: SEED,
    })
    const gum = firstOrder(1, 1, 1, 1)
    expect(gum.u.toFixed(2)).toBe('2.00')
    expect(gum.U.toFixed(2)).toBe('3.92')
    // The ends of the interval are known to 0.008 (one standard deviation) from 400 000 trials.
    expect(Math.abs(simulated.mean)).toBeLessThan(0.015)
    expect(Math.abs(simulated.u - 2)).toBeLessThan(0.01)
    expect(Math.abs(simulated.low + 3.92)).toBeLessThan(0.03)
    expect(Math.abs(simulated.high - 3.92)).toBeLessThan(0.03)
    const verdict = compareWithFirstOrder(gum, simulated, 2)
    expect(verdict.tolerance).toBeCloseTo(0.05, 12)
    expect(verdict.firstOrderIsGoodEnough).toBe(true)
  })

  it('9.2.3, four rectangular quantities of unit u: ±3.88 at 95 %', () => {
    const simulated = monteCarlo((r) => rectangular(r) + rectangular(r) + rectangular(r) + rectangular(r), {
      trials: TRIALS,
      seed: SEED,
    })
    // In closed form 2√3 (2 − (3/5)^¼) = 3.8794: the tail of a sum of four rectangular quantities.
    const closedForm = 2 * Math.sqrt(3) * (2 - 0.6 ** 0.25)
    expect(closedForm.toFixed(2)).toBe('3.88')
    expect(Math.abs(simulated.u - 2)).toBeLessThan(0.01)
    expect(Math.abs(simulated.low + closedForm)).toBeLessThan(0.025)
    expect(Math.abs(simulated.high - closedForm)).toBeLessThan(0.025)
  })

  it('9.2.3, the first-order ±3.92 is 0.04 off, so confirmed at two digits, δ = 0.05 (verdict from memory)', () => {
    const gum = firstOrder(1, 1, 1, 1)
    const end = 2 * Math.sqrt(3) * (2 - 0.6 ** 0.25)
    const exactly = { trials: TRIALS, mean: 0, u: 2, low: -end, high: end }
    const verdict = compareWithFirstOrder(gum, exactly, 2)
    expect(verdict.highDifference.toFixed(2)).toBe('0.04')
    expect(verdict.lowDifference.toFixed(2)).toBe('0.04')
    expect(verdict.tolerance).toBeCloseTo(0.05, 12)
    expect(verdict.firstOrderIsGoodEnough).toBe(true)
  })

  it('9.2.4, one of the rectangular quantities ten times the others: ±17.0 against ±19.9 of first order, refused at two digits (from memory)', () => {
    const simulated = monteCarlo(
      (r) => rectangular(r) + rectangular(r) + rectangular(r) + rectangular(r, 10),
      { trials: TRIALS, seed: SEED },
    )
    const gum = firstOrder(1, 1, 1, 10)
    expect(gum.u.toFixed(1)).toBe('10.1')
    expect(gum.U.toFixed(1)).toBe('19.9')
    expect(Math.abs(simulated.u - Math.sqrt(103))).toBeLessThan(0.04)
    expect(Math.abs(simulated.high - 17)).toBeLessThan(0.08)
    expect(Math.abs(simulated.low + 17)).toBeLessThan(0.08)
    for (const digits of [1, 2] as const) {
      const verdict = compareWithFirstOrder(gum, simulated, digits)
      expect(verdict.tolerance).toBeCloseTo(digits === 2 ? 0.5 : 5, 12)
      expect(verdict.firstOrderIsGoodEnough).toBe(digits === 1)
    }
  })
})
