import { describe, expect, it } from 'vitest'
import { glyphReader } from '../../../../src/core/reading/box/glyph-reader.ts'
import { handOfFigures } from '../../../../src/core/reading/hand/hand-of-figures.ts'
import type { LetteringName } from '../drawn/letterings.ts'
import { figuresOfHand, lessonInFrame, scoreHand } from '../judge/hand-lesson.ts'

/** Letterings on which nothing of how a hand is learned was chosen. */
const HANDS = [
  'Patrick Hand',
  'Kalam',
  'pen, quick',
  'pen, broad',
] as const satisfies readonly LetteringName[]
const [KNOWN, ASKED] = [20, 16]
/** On a machine that does much else, milliseconds. */
const PATIENCE = 240_000

describe('a hand on sheets hard to read', () => {
  it(
    'is read no worse once twenty of its figures are known, and its names are likelier on the whole',
    async () => {
      const reader = glyphReader()
      const scores = await Promise.all(
        HANDS.map(async (lettering, i) => {
          const figures = await figuresOfHand({ lettering, level: 'bad', seed: 40 + i }, 0, KNOWN + ASKED)
          const known = figures.slice(0, KNOWN).map((figure) => lessonInFrame(reader, figure, figure.text))
          const asked = figures.slice(KNOWN).map((figure) => lessonInFrame(reader, figure, figure.written))
          return { without: scoreHand(undefined, asked), withHand: scoreHand(handOfFigures(known), asked) }
        }),
      )
      for (const { without, withHand } of scores) {
        // Of some hundred glyphs two may go either way by chance.
        expect(withHand.glyphsWrong).toBeLessThanOrEqual(without.glyphsWrong + 2)
      }
      const sum = (of: (one: (typeof scores)[number]) => number) => scores.reduce((s, one) => s + of(one), 0)
      expect(sum(({ without }) => without.glyphs)).toBeGreaterThan(250)
      // So few are wrong that whether they become fewer is chance: over more figures `npm run bench:hand` tells it.
      const wrong = sum(({ without }) => without.glyphsWrong)
      expect(sum(({ withHand }) => withHand.glyphsWrong)).toBeLessThanOrEqual(wrong + Math.sqrt(wrong))
      expect(sum(({ withHand }) => withHand.logs)).toBeGreaterThan(sum(({ without }) => without.logs))
    },
    PATIENCE,
  )
})
