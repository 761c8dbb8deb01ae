import { beforeAll, describe, it } from 'vitest'
import { crossingTrial } from './judge/crossing-trial.ts'
import { mustBeAccurate, mustBeFound, mustBeHonest } from './judge/must-pass.ts'
import type { Score } from './judge/score.ts'
import type { Meeting } from './simulate/crossing-case.ts'
import type { Kind } from './simulate/look.ts'

const CLASSES: [name: string, kind: Kind, meeting: Meeting][] = [
  ['crossing in white noise', 'noise', 'X'],
  ['of which one ends on the other, in white noise', 'noise', 'T'],
  ['that meet at their ends, in white noise', 'noise', 'L'],
  ['crossing, through JPEG at quality 70', 'JPEG', 'X'],
  ['crossing, in one bit', 'one bit', 'X'],
]

describe.each(CLASSES)('two strokes %s', (_, kind, meeting) => {
  let s: Score
  beforeAll(async () => {
    s = await crossingTrial(kind, 60, 15, [meeting])
  })
  it('meet as near to the truth as the bound of their kept pieces asks', () => mustBeAccurate(s))
  it('tell the uncertainty of where they meet', () => mustBeHonest(s))
  it('are found', () => mustBeFound(s))
})
