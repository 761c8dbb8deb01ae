import { describe, expect, it } from 'vitest'
import { gridTrial } from './grid-trial.ts'
import { together } from './landed.ts'
import { pairTrial } from './pair-trial.ts'
import { roundTrial } from './round-pair.ts'
import { FINISHES } from './scanned.ts'

/** The share that is found at least: at one bit thin strokes fall to pieces at a level that cuts most of them off. */
const FOUND = { clean: 0.93, JPEG: 0.93, aged: 0.93, 'one bit': 0.8 } as const

const CLASSES = FINISHES.flatMap((finish) => [false, true].map((blueprint) => ({ finish, blueprint })))

describe.each(CLASSES.map((one, i) => ({ ...one, seed: 710 + i })))(
  'of two strokes side by side ($finish, a blueprint: $blueprint)',
  ({ finish, blueprint, seed }) => {
    it('the paper between is never taken for one, however a hand points', async () => {
      const { points, edges, lines } = await pairTrial(finish, blueprint, 8, seed)
      const { circles, arcs } = await roundTrial(finish, blueprint, 2, seed)
      const crossings = await gridTrial(finish, blueprint, 2, seed)
      const all = together([points, edges, lines, circles, arcs, crossings])
      expect(all.paper).toBe(0)
      expect(all.right / all.cases).toBeGreaterThanOrEqual(FOUND[finish])
    })
  },
)

it('the paper between two strokes is not taken either when strokes as light as paper are asked for', async () => {
  const { points, edges, lines } = await pairTrial('clean', false, 8, 74, 'light')
  const { circles, arcs } = await roundTrial('clean', false, 2, 75, 'light')
  const all = together([points, edges, lines, circles, arcs])
  expect(all.none).toBe(all.cases)
})
