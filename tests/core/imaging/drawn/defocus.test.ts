import { expect, it } from 'vitest'
import { defocusOutcomes } from './defocus-trial.ts'
import { told } from './edge-trial.ts'

/** Both edges of one stroke are wrong together, so that they count as one: an rms of so many is known to 0.29. */
const STROKES = 6
const [LEAST, MOST] = [0.77 * (1 - 3 * 0.29), 1.3 * (1 + 3 * 0.29)] as const

it.each([
  { finish: 'clean', seed: 580 },
  { finish: 'JPEG', seed: 583 },
] as const)(
  'edges of thin strokes out of focus are as sure as is stated of them: $finish',
  async ({ finish, seed }) => {
    const looks = { widths: [1.5, 2.5], radii: [1.2, 1.8] } as const
    const { points, lines, missed } = await defocusOutcomes(finish, STROKES, seed, looks)
    expect(missed).toBe(0)
    for (const errors of [points, lines]) {
      const { rms } = told(errors)
      expect(rms).toBeGreaterThanOrEqual(LEAST)
      expect(rms).toBeLessThanOrEqual(MOST)
    }
  },
)
