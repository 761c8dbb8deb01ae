import { describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { MEASURE_NEEDS } from '../../../src/core/job/model/mark-needs.ts'
import { MEASURE_WORDS, pickProgress, pickSentence } from '../../../src/renderer/guide/pick-sentences.ts'
import { ended, noPicks, type Picks, withPick } from '../../../src/renderer/picking/picks.ts'
import type { Tool, ToolMeasure } from '../../../src/renderer/picking/tool.ts'

/** What is said before each of so many picks. */
function said(tool: Tool, picks: number): string[] {
  const sentences: string[] = []
  let now: Picks = noPicks(tool)
  for (let k = 0; k < picks; k++) {
    sentences.push(pickSentence(now))
    now = withPick(now, pixel(k, k * k))
  }
  return sentences
}

const SLOT: Tool = { kind: 'measure', view: 'V1', measure: 'centres', of: 'slot' }

const measure = (one: ToolMeasure): Tool => ({ kind: 'measure', view: 'V1', measure: one })

describe('what to pick next', () => {
  it('leads round a rectangle', () => {
    expect(said({ kind: 'reference', view: 'V1', reference: 'rectangle' }, 4)).toEqual([
      'Pick a corner of the rectangle.',
      'Go along its width: pick the next corner.',
      'Go on round: pick the third corner.',
      'Pick the last corner.',
    ])
  })

  it('tells two circles apart', () => {
    const sentences = said(measure('centres'), 6)
    expect(sentences.slice(0, 3).every((one) => one.startsWith('First circle: pick a'))).toBe(true)
    expect(sentences.slice(3).every((one) => one.startsWith('Second circle: pick a'))).toBe(true)
    expect(new Set(sentences).size).toBe(6)
  })

  it('leads from one end of a slot to the other, and round an end that one pick does not settle', () => {
    expect(said(SLOT, 2)).toEqual([
      'Pick one round end, at its top, or drag from end to end.',
      'Pick the other round end, at its top.',
    ])
    const byHand = withPick(noPicks(SLOT), pixel(0, 0), 1, true)
    expect(pickSentence(byHand)).toMatch(/^First end: pick a second point on the rim/)
    expect(pickProgress(byHand)).toEqual({ settled: 0, of: 2 })
  })

  it('tells two lines apart', () => {
    expect(said(measure('angle'), 4)).toEqual([
      'First line: pick a point on it.',
      'First line: pick another point on it, well away.',
      'Second line: pick a point on it.',
      'Second line: pick another point on it, well away.',
    ])
  })

  it('says when a run or an outline can be ended', () => {
    expect(said(measure('run'), 3).at(-1)).toBe('Pick the next bend, or press Enter to end the run.')
    expect(said(measure('area'), 3).at(-1)).not.toMatch(/Enter/)
    expect(said(measure('area'), 4).at(-1)).toMatch(/press Enter to close the outline/)
  })

  it('is nothing without a tool, or when all is picked', () => {
    expect(pickSentence(noPicks({ kind: 'look' }))).toBe('')
    const both = withPick(withPick(noPicks(measure('distance')), pixel(0, 0)), pixel(9, 9))
    expect(pickSentence(both)).toBe('')
    expect(pickProgress(both)).toEqual({ settled: 2, of: 2 })
  })

  it('counts marks, not picks', () => {
    const one = withPick(noPicks(measure('spacing')), pixel(0, 0))
    expect(pickProgress(one)).toEqual({ settled: 0, of: 2 })
    expect(pickProgress(withPick(one, pixel(9, 0)))).toEqual({ settled: 1, of: 2 })
    const path = withPick(withPick(noPicks(measure('run')), pixel(0, 0)), pixel(9, 0))
    expect(pickProgress(path)).toEqual({ settled: 0, of: 1 })
    expect(pickProgress(ended(path))).toEqual({ settled: 1, of: 1 })
  })

  it('has words for every measure but those of a slot, which one tool takes at once', () => {
    expect(Object.keys(MEASURE_WORDS).sort()).toEqual(
      Object.keys(MEASURE_NEEDS)
        .filter((measure) => !measure.startsWith('slot-'))
        .sort(),
    )
  })
})
