import { describe, expect, it } from 'vitest'
import { isMostlyDark, luminance } from '../../../src/renderer/tiles/luminance.ts'

describe('the grey of pixels', () => {
  it('is grey as it is, and of colour the luminance (ITU-R BT.709)', () => {
    expect([...luminance([7, 7, 7, 255, 255, 255, 255, 255])]).toEqual([7, 255])
    // 0.2126, 0.7152 and 0.0722 of 255.
    expect([...luminance([255, 0, 0, 255, 0, 255, 0, 255, 0, 0, 255, 255])]).toEqual([54, 182, 18])
  })

  it('tells a blueprint from ink on paper', () => {
    // Of 20 pixels three are lines.
    const drawn = (ground: number, line: number) =>
      Uint8Array.from({ length: 20 }, (_, i) => (i < 3 ? line : ground))
    expect(isMostlyDark(drawn(60, 230))).toBe(true)
    expect(isMostlyDark(drawn(230, 20))).toBe(false)
    expect(isMostlyDark(Uint8Array.of(127, 128))).toBe(true)
    expect(isMostlyDark(Uint8Array.of(128, 128))).toBe(false)
  })
})
