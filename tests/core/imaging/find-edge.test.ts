import { beforeAll, describe, it } from 'vitest'
import { edgeTrial } from './judge/edge-trial.ts'
import { mustBeAccurate, mustBeFound, mustBeHonest } from './judge/must-pass.ts'
import type { Score } from './judge/score.ts'
import type { Kind } from './simulate/look.ts'

const CLASSES: [name: string, kind: Kind][] = [
  ['in white noise', 'noise'],
  ['through JPEG at quality 70', 'JPEG'],
  ['in one bit', 'one bit'],
]

describe.each(CLASSES)('either edge of a stroke %s', (_, kind) => {
  let s: Score
  beforeAll(async () => {
    s = await edgeTrial(kind, 60, 12)
  })
  it('is as near to the truth as the bound asks when width, contrast and blur are unknown', () =>
    mustBeAccurate(s))
  it('tells its own uncertainty', () => mustBeHonest(s))
  it('is found', () => mustBeFound(s))
})
