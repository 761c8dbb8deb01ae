import { expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { reason as coreReason } from '../../../../src/core/words/core-words.ts'
import { missedInWords, searchInWords } from '../../../../src/renderer/desk/in-hand/stroke-words.ts'
import type { NewFeature } from '../../../../src/renderer/picking/picks.ts'
import type { StrokeState } from '../../../../src/renderer/picking/stroke-state.ts'
import { reason } from '../../../../src/renderer/words/window-words.ts'

const said = (stroke: StrokeState): string =>
  searchInWords({
    tool: { kind: 'straighten' },
    features: [{ need: 'line', pixels: [pixel(0, 0), pixel(9, 0)], sigmas: [1, 1], done: true, stroke }],
  })

it('A search that found nothing says why, and that the picks stay as the hand made them', () => {
  expect(said({ state: 'looking' })).toBe('Looking for the stroke…')
  expect(said({ state: 'none', because: coreReason('stroke.too-faint') })).toBe(
    'Picked by hand. Too faint to be told from its ground here. Pick by hand, or go nearer.',
  )
  expect(said({ state: 'none', because: reason('search.too-large') })).toBe(
    'Picked by hand. That is more of the scan than can be looked over in one go: pick nearer together, or by hand.',
  )
})

it('Of what was picked before the newest it is said where no stroke was found', () => {
  const end = (stroke: StrokeState): NewFeature => ({
    need: 'point',
    pixels: [pixel(1, 1)],
    sigmas: [9],
    done: true,
    stroke,
  })
  const none: StrokeState = { state: 'none', because: coreReason('stroke.too-faint') }
  const tool = { kind: 'measure', view: 'V1', measure: 'distance' } as const
  expect(missedInWords({ tool, features: [end(none), end({ state: 'looking' })] })).toBe(
    'First end: by hand, for no stroke was found there. Take the picks back with Esc to pick closer.',
  )
  expect(missedInWords({ tool, features: [end({ state: 'looking' }), end(none)] })).toBe('')
  // Where both are by hand, each sentence names the one that it is about.
  expect(searchInWords({ tool, features: [end(none), end(none)] })).toBe(
    'Second end: by hand. Too faint to be told from its ground here. Pick by hand, or go nearer.',
  )
})
