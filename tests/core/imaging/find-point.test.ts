import { beforeAll, describe, it } from 'vitest'
import { HIDDEN } from './judge/many.ts'
import { mustBeAccurate, mustBeFound, mustBeHonest } from './judge/must-pass.ts'
import { pointTrial } from './judge/point-trial.ts'
import type { Score } from './judge/score.ts'
import type { Kind } from './simulate/look.ts'

/** Signal to noise of 3 to 30 a pixel, strokes 2 to 12 px wide, any direction, 15 to 100 % contrast. More in tests/bench/strokes.ts. */
const CLASSES: [name: string, kind: Kind, hidden: number, cases: number][] = [
  ['in white noise', 'noise', 0, 200],
  ['blurred', 'blur', 0, 200],
  ['on grained paper', 'grain', 0, 200],
  ['through JPEG at quality 70', 'JPEG', 0, 200],
  ['in one bit', 'one bit', 0, 200],
  ['in white noise, a fifth hidden', 'noise', HIDDEN, 200],
  ['through JPEG, a fifth hidden', 'JPEG', HIDDEN, 200],
]

describe.each(CLASSES)('a point on a stroke %s', (_, kind, hidden, cases) => {
  let s: Score
  beforeAll(async () => {
    s = await pointTrial(kind, cases, 11, hidden)
  })
  it('is as near to the truth as the Cramér–Rao bound asks', () => mustBeAccurate(s))
  it('tells its own uncertainty', () => mustBeHonest(s))
  it('is found', () => mustBeFound(s))
})
