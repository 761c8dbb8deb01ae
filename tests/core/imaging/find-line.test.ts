import { beforeAll, describe, it } from 'vitest'
import { lineTrial } from './judge/line-trial.ts'
import { HIDDEN } from './judge/many.ts'
import { mustBeAccurate, mustBeFound, mustBeHonest } from './judge/must-pass.ts'
import type { Score } from './judge/score.ts'
import type { Kind } from './simulate/look.ts'

/** 60 to 200 px long. More in tests/bench/strokes.ts. */
const CLASSES: [name: string, kind: Kind, hidden: number, cases: number][] = [
  ['in white noise', 'noise', 0, 100],
  ['blurred', 'blur', 0, 60],
  ['on grained paper', 'grain', 0, 60],
  ['through JPEG at quality 70', 'JPEG', 0, 60],
  ['in one bit', 'one bit', 0, 60],
  ['in white noise, a fifth hidden', 'noise', HIDDEN, 60],
  ['in one bit, a fifth hidden', 'one bit', HIDDEN, 60],
]

describe.each(CLASSES)('a straight stroke %s', (_, kind, hidden, cases) => {
  let s: Score
  beforeAll(async () => {
    s = await lineTrial(kind, cases, 13, hidden)
  })
  it('is as near to the truth, all along it, as the Cramér–Rao bound asks', () => mustBeAccurate(s))
  it('tells its own uncertainty of place and direction', () => mustBeHonest(s))
  it('is found', () => mustBeFound(s))
})
