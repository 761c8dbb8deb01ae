import { expect, test } from 'vitest'
import { glyphReader } from '../../../src/core/reading/box/glyph-reader.ts'
import type { KnownFigure } from '../../../src/core/reading/box/known-figure.ts'
import type { GreyPage } from '../../../src/main/services/reading/page/grey-page.ts'
import { LearnedHands } from '../../../src/main/services/reading/process/learned-hands.ts'

test('known figures are looked at once, a few an order, and one that is corrected once more', async () => {
  let looks = 0
  const blank: GreyPage = {
    greys: async (area) => {
      looks++
      return { ...area, data: new Uint8Array(area.width * area.height).fill(255) }
    },
  }
  const of = { key: 'a page', page: blank, size: { width: 900, height: 600 } }
  const known = Array.from(
    { length: 6 },
    (_, i): KnownFigure => ({ box: { x: 100 * i, y: 50, width: 60, height: 30 }, text: `${i + 1}"` }),
  )
  const hands = new LearnedHands()
  const trained = glyphReader()
  const heard = async (page = of, figures: readonly KnownFigure[] = known) =>
    (await hands.readerOf(trained, page, figures)).heard
  expect(await heard()).toEqual([0, 1, 2, 3])
  expect(await heard()).toEqual([0, 1, 2, 3, 4, 5])
  expect(await heard()).toEqual([0, 1, 2, 3, 4, 5])
  expect(looks).toBe(6)

  const corrected = known.map((figure, i) => (i === 2 ? { ...figure, text: '8"' } : figure))
  expect(await heard(of, corrected)).toEqual([0, 1, 2, 3, 4, 5])
  expect(looks).toBe(7)
  // What stands on another page is another figure; where nothing is written, nobody's hand is seen.
  const other = await hands.readerOf(trained, { ...of, key: 'another page' }, known.slice(0, 2))
  expect(other).toEqual({ reader: trained, heard: [0, 1], figures: 0 })
  expect(looks).toBe(9)
})
