import { describe, expect, it } from 'vitest'
import { PLAIN } from '../../../src/renderer/looking/aids.ts'
import { isShownDark, scanTone } from '../../../src/renderer/looking/scan-tone.ts'

describe('how a scan is toned', () => {
  it('is not at all when nothing is asked for', () => {
    expect(scanTone(PLAIN, false, false)).toEqual({ filter: '', lift: null })
    expect(scanTone(PLAIN, true, true)).toEqual({ filter: '', lift: null })
  })

  it('waits with lifting for the ground', () => {
    expect(scanTone({ ...PLAIN, lift: true }, false, false).lift).toBeNull()
    expect(scanTone({ ...PLAIN, lift: true }, false, true)).toEqual({ filter: '', lift: 'plain' })
  })

  it('lifts a sheet that is light on dark as its negative, and then shows it as it was asked for', () => {
    expect(scanTone({ ...PLAIN, lift: true }, true, true)).toEqual({ filter: 'invert(1)', lift: 'negative' })
    expect(scanTone({ ...PLAIN, lift: true, negative: true }, true, true)).toEqual({
      filter: '',
      lift: 'negative',
    })
  })

  it('takes the negative before the contrast', () => {
    expect(scanTone({ ...PLAIN, negative: true, contrast: 1.5 }, false, false).filter).toBe(
      'invert(1) contrast(1.5)',
    )
  })

  it('leaves a blueprint dark until its negative is asked for', () => {
    expect(isShownDark(true, PLAIN)).toBe(true)
    expect(isShownDark(true, { ...PLAIN, negative: true })).toBe(false)
    expect(isShownDark(true, { ...PLAIN, lift: true })).toBe(true)
  })
})
