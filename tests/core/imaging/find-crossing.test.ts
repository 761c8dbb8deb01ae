import { beforeAll, describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { findCrossing } from '../../../src/core/imaging/index.ts'
import { inWords } from '../../../src/core/words/core-words.ts'
import { crossingTrial } from './judge/crossing-trial.ts'
import { many } from './judge/many.ts'
import { mustBeAccurate, mustBeFound, mustBeHonest } from './judge/must-pass.ts'
import type { Score } from './judge/score.ts'
import { crossingCase, type Meeting } from './simulate/crossing-case.ts'
import { type Kind, someLook } from './simulate/look.ts'

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

describe('a crossing farther from the pick than it is looked for', () => {
  it('is not told, and a sentence says how far off it is', async () => {
    const said = await many(20, 19, async (r, i) => {
      const c = await crossingCase(someLook('noise', r), r, 'X')
      return findCrossing(c.window, pixel(c.place[0] + 9 * Math.cos(i), c.place[1] + 9 * Math.sin(i)))
    })
    for (const found of said) {
      expect(found.kind).toBe('none')
      if (found.kind === 'none') expect(inWords(found.because)).toMatch(/cross (8|9)\.\d px from the pick/)
    }
  })
})
