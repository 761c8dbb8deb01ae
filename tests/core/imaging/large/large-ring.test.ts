import { expect, it } from 'vitest'
import { largeRingTrial } from './large-ring-trial.ts'

const WHOLE = 2 * Math.PI
const QUARTER = Math.PI / 2

const CASES = [
  { diameter: 2_000, of: 'the whole', sweep: WHOLE, seed: 211, surely: 0.006 },
  { diameter: 2_000, of: 'a quarter', sweep: QUARTER, seed: 212, surely: 0.08 },
  { diameter: 8_000, of: 'a quarter', sweep: QUARTER, seed: 213, surely: 0.06 },
  { diameter: 14_000, of: 'a quarter', sweep: QUARTER, seed: 214, surely: 0.06 },
] as const

it.each(CASES)(
  'a circle of $diameter px is told as surely as its length allows, and truly, by what lies along it: $of',
  async ({ diameter, sweep, seed, surely }) => {
    const found = await largeRingTrial(diameter, sweep, seed)
    if (found === null) throw new Error('It is not found.')
    expect(found.stated).toBeLessThan(surely)
    expect(Math.abs(found.error)).toBeLessThan(3 * found.stated)
  },
)

it('and so is one that another program has drawn', async () => {
  const found = await largeRingTrial(2_000, QUARTER, 221, 'SVG')
  if (found === null) throw new Error('It is not found.')
  expect(found.stated).toBeLessThan(0.08)
  expect(Math.abs(found.error)).toBeLessThan(3 * found.stated)
})
