import { describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { findCrossing } from '../../../src/core/imaging/index.ts'
import { inWords } from '../../../src/core/words/core-words.ts'
import { many } from './judge/many.ts'
import { crossingCase } from './simulate/crossing-case.ts'
import { someLook } from './simulate/look.ts'

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
