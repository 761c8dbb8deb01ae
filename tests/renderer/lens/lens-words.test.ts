import { describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import { reason as coreReason } from '../../../src/core/words/core-words.ts'
import { lensWords } from '../../../src/renderer/lens/lens-words.ts'
import type { UnderPointer } from '../../../src/renderer/strokes/under-pointer.ts'
import { reason } from '../../../src/renderer/words/window-words.ts'

const words = (under: UnderPointer, coarse = '', otherInk = false) =>
  lensWords(under, { how: 'hand', sigma: 1.5 }, coarse, {
    byHand: false,
    straight: 'centre',
    round: 'centre',
    crossings: true,
    otherInk,
  })

describe('what the lens says where a pick would be by hand', () => {
  it.each([
    [
      coreReason('stroke.none-within', { reach: 8 }),
      'No stroke was seen within 8 px. Pick by hand, or go nearer.',
    ],
    [
      reason('search.scan-not-come'),
      'This part of the scan has not come in time: cancel it and pick once more, or go on by hand.',
    ],
  ])('is why there is no stroke, be that a reason of core or of the window', (because, note) => {
    expect(words({ state: 'none', at: pixel(3, 4), because })).toEqual({ sure: 'by hand, ± 2.9 px', note })
  })

  it('is also how to come back from the other ink to that of the sheet', () => {
    const because = coreReason('stroke.none-within', { reach: 8 })
    expect(words({ state: 'none', at: pixel(3, 4), because }, '', true).note).toBe(
      'No stroke was seen within 8 px. Pick by hand, or go nearer. I goes back to the ink of the sheet.',
    )
  })

  it('says once what the key for ink does', () => {
    const because = reason('search.other-ink')
    const { note } = words({ state: 'none', at: pixel(3, 4), because }, '', true)
    expect(note).toMatch(/To look for that, press I\.$/)
  })

  it('is to go closer from too far off, unless the picture is not the scan as it is', () => {
    expect(words({ state: 'far' }).note).toBe(
      'Too far off to tell which stroke is meant: go closer to find it.',
    )
    expect(words({ state: 'far' }, 'The picture is on its way.').note).toBe('The picture is on its way.')
  })
})
