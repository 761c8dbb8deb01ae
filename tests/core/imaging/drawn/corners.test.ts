import { expect, it } from 'vitest'
import { AIMS_EACH, cornerTrial } from './corner-trial.ts'
import { FINISHES } from './scanned.ts'

const CORNERS = 4

it.each(FINISHES.map((finish, i) => ({ finish, seed: 560 + i })))(
  'a corner is found from wherever it is aimed at, and not where extension lines beyond it cross: $finish',
  async ({ finish, seed }) => {
    const aims = (await cornerTrial(finish, CORNERS, seed)).flatMap(({ away }) => away)
    const found = aims.filter((away) => away !== null)
    expect(aims).toHaveLength(AIMS_EACH * CORNERS)
    // Some are refused where much of a stroke is hatched.
    expect(found.length / aims.length).toBeGreaterThanOrEqual(0.9)
    for (const away of found) expect(away).toBeLessThan(1.4)
  },
)
