import { describe, expect, it } from 'vitest'
import { pyramidLevels } from '../../../src/contract/picture-pyramid.ts'
import type { SheetPictures } from '../../../src/contract/pictures.ts'
import { pickQuality } from '../../../src/renderer/picking/pick-quality.ts'

const pictures = (state: 'overview' | 'ready'): SheetPictures => ({
  sheet: 'S1',
  version: 'v',
  width: 8192,
  height: 4096,
  overview: { width: 2048, height: 1024 },
  exact: true,
  levels: pyramidLevels(8192, 4096),
  progress: { sheet: 'S1', state, done: 0, sentence: '' },
})

// Common practice, no source: nobody places a pick more finely than the pixels that they see.
describe('a pick by hand', () => {
  it('is good to a pixel of the scan where the scan is shown full size or larger', () => {
    expect(pickQuality('pointer', 1, pictures('ready')).sigma).toBe(1)
    expect(pickQuality('pointer', 8, pictures('ready')).sigma).toBe(1)
  })

  it('is good to a pixel of the screen where the sheet is shown smaller', () => {
    expect(pickQuality('pointer', 0.125, pictures('ready')).sigma).toBe(8)
  })

  it('is good to a pixel of the overview until the sheet is there in full', () => {
    expect(pickQuality('cross', 4, pictures('overview')).sigma).toBe(4)
  })

  it('is good to a pixel of the scan with the cross, which is watched through the lens', () => {
    expect(pickQuality('cross', 0.125, pictures('ready')).sigma).toBe(1)
  })
})
