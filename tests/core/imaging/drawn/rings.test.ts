import { expect, it } from 'vitest'
import { ringTrial } from './ring-trial.ts'

/** Drawings in which the ring beside the one that is picked is as strong, and near enough to be drawn over to; or hides it. */
const HARD = [
  { finish: 'aged', blueprint: false, seed: 3089 },
  { finish: 'one bit', blueprint: false, seed: 3110 },
  { finish: 'JPEG', blueprint: false, seed: 3192 },
  { finish: 'clean', blueprint: true, seed: 3103 },
] as const

it.each(HARD)(
  'of two rings about one centre the one that is picked is found: $finish, a blueprint: $blueprint',
  async ({ finish, blueprint, seed }) => {
    for (const { off, width } of await ringTrial(finish, blueprint, 1, 8, seed)) {
      expect(off).not.toBeNull()
      expect(off).toBeLessThan(width / 2)
    }
  },
)
