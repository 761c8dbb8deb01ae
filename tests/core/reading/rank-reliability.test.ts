import { expect, it } from 'vitest'
import { rankFigures } from '../../../src/core/reading/ranking/rank-figures.ts'
import { bandOf, bands, count, truthOf } from './bands.ts'
import { simulateHardFigures } from './hard-figures.ts'

it('simulated figures are right within five in a hundred in each tenth of what it says, of all that it lists', () => {
  // One glyph lost, for of these so many can be tried that each tenth holds enough to show it.
  const all = bands()
  for (const seed of [1, 2, 3]) {
    for (const simulated of simulateHardFigures(7_000, seed, 1)) {
      const right = truthOf(simulated)
      const { figures, none } = rankFigures(simulated.hard)
      let sum = none
      for (const { text, probability } of figures) {
        sum += probability
        count(bandOf(all, probability), probability, text === right)
      }
      if (Math.abs(sum - 1) > 1e-9)
        throw new Error(`${simulated.hard.seen}: the probabilities sum to ${sum}.`)
    }
  }
  for (const { n, said, right } of all) {
    expect(n).toBeGreaterThan(200)
    expect(Math.abs(said - right) / n, `${n} about ${(said / n).toFixed(2)}`).toBeLessThanOrEqual(0.05)
  }
})
