import { beforeAll, describe, it } from 'vitest'
import { edgeTrial } from './judge/edge-trial.ts'
import { mustBeAccurate, mustBeFound, mustBeHonest } from './judge/must-pass.ts'
import type { Score } from './judge/score.ts'
import type { Kind } from './simulate/look.ts'

const CLASSES: [name: string, kind: Kind, cases: number][] = [
  ['in white noise', 'noise', 60],
  ['blurred', 'blur', 100],
  ['on grained paper', 'grain', 100],
  ['through JPEG at quality 70', 'JPEG', 60],
  ['in one bit', 'one bit', 60],
]

describe.each(CLASSES)('either edge of a stroke %s', (_, kind, cases) => {
  let s: Score
  beforeAll(async () => {
    s = await edgeTrial(kind, cases, 12)
  })
  it('is as near to the truth as the bound asks when width, contrast and blur are unknown', () =>
    mustBeAccurate(s))
  it('tells its own uncertainty', () => mustBeHonest(s))
  it('is found', () => mustBeFound(s))
})
