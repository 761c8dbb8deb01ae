import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import {
  findCircle,
  findCrossing,
  findLine,
  findPoint,
  type GreyWindow,
  type NoStrokeReason,
} from '../../../src/core/imaging/index.ts'
import { inWords } from '../../../src/core/words/core-words.ts'
import { caseStream } from './simulate/case-stream.ts'
import { EMPTY_PLACES, type EmptyPlace, withoutStroke } from './simulate/without-stroke.ts'

const SIZE = 88
const MIDDLE: Pixel = pixel(SIZE / 2, SIZE / 2)

/** The share of places of a kind where nothing is found, and of what it says. */
async function noneIn(
  kind: EmptyPlace,
  cases: number,
  find: (w: GreyWindow) => { kind: string; because?: NoStrokeReason },
) {
  let none = 0
  const said = new Set<string>()
  for (let i = 0; i < cases; i++) {
    const found = find(
      await withoutStroke(kind, SIZE, caseStream(21_000_000 + 1000 * EMPTY_PLACES.indexOf(kind) + i)),
    )
    if (found.kind !== 'none') continue
    none++
    if (found.because) said.add(inWords(found.because))
  }
  return { share: none / cases, said }
}

describe.each(EMPTY_PLACES)('where there is no stroke (%s)', (kind) => {
  it('no point is found in at least 98 of 100 places, and a sentence says so', async () => {
    const { share, said } = await noneIn(kind, 100, (w) => findPoint(w, MIDDLE))
    for (const sentence of said) expect(sentence).toMatch(/^[A-Z].*\.$/)
    expect(share).toBeGreaterThanOrEqual(0.98)
  })

  it('no line is found in at least 98 of 100 places', async () => {
    expect(
      (await noneIn(kind, 50, (w) => findLine(w, pixel(24, 40), pixel(64, 48)))).share,
    ).toBeGreaterThanOrEqual(0.98)
  })

  it('no circle and no crossing is found in at least 98 of 100 places', async () => {
    const circle = await noneIn(kind, 25, (w) => findCircle(w, [pixel(26, 44), pixel(44, 26), pixel(62, 44)]))
    const crossing = await noneIn(kind, 25, (w) => findCrossing(w, MIDDLE))
    expect((circle.share + crossing.share) / 2).toBeGreaterThanOrEqual(0.98)
  })
})
