import { expect, it } from 'vitest'
import { edgeOutcomes, told } from './edge-trial.ts'
import { holeTrial } from './hole-trial.ts'
import { FINISHES } from './scanned.ts'

/**
 * Strokes a finish. Both edges of one are wrong together, so that they count as one: of a true share of 95 in a hundred
 * fewer than 77 in a hundred of so many are seen once in seven hundred, and a true rms of 0.77 to 1.3 is seen within three of
 * its own standard errors, 0.17 each.
 */
const STROKES = 18
const LEAST_WITHIN = 0.77
const [LEAST, MOST] = [0.77 * (1 - 3 * 0.17), 1.3 * (1 + 3 * 0.17)] as const

it.each(FINISHES.map((finish, i) => ({ finish, seed: 520 + i })))(
  'edges are as sure as is stated of them: $finish',
  async ({ finish, seed }) => {
    const { points, lines, missed } = await edgeOutcomes(finish, STROKES, seed)
    expect(missed / (4 * STROKES)).toBeLessThanOrEqual(finish === 'one bit' ? 0.1 : 0.02)
    for (const errors of [points, lines]) {
      const { within, rms } = told(errors)
      expect(within).toBeGreaterThanOrEqual(LEAST_WITHIN)
      expect(rms).toBeGreaterThanOrEqual(LEAST)
      expect(rms).toBeLessThanOrEqual(MOST)
    }
  },
)

it.each(FINISHES.map((finish, i) => ({ finish, seed: 530 + i })))(
  'the crossing of centre lines within a small hole is found: $finish',
  async ({ finish, seed }) => {
    const outcomes = await holeTrial(finish, 10, seed, [15, 30])
    const found = outcomes.filter(({ away }) => away !== null)
    // At one bit the thinnest centre lines fall to pieces where most of them is cut off.
    expect(found.length).toBeGreaterThanOrEqual(finish === 'one bit' ? 7 : 9)
    for (const { away, z } of found) {
      expect(away).toBeLessThan(0.6)
      expect(z).toBeLessThan(5)
    }
  },
)
