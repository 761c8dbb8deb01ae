import { describe, expect, it } from 'vitest'
import { plainText } from '../../../src/core/words/plain-text.ts'

const range = (from: number, to: number): number[] =>
  Array.from({ length: to - from + 1 }, (_, k) => from + k)

/** C0, DEL and C1; the line and paragraph separators; the marks of Unicode Annex 9 that set a direction. */
const MARKS = [
  ...range(0x00, 0x1f),
  ...range(0x7f, 0x9f),
  0x061c,
  0x200e,
  0x200f,
  0x2028,
  0x2029,
  ...range(0x202a, 0x202e),
  ...range(0x2066, 0x2069),
].map(
  (code) => [`U+${code.toString(16).toUpperCase().padStart(4, '0')}`, String.fromCodePoint(code)] as const,
)

describe('Text that can be shown anywhere', () => {
  it.each(MARKS)('has no %s', (_, mark) => {
    expect(plainText(`14${mark}3/8`)).toBe('14 3/8')
    expect(plainText(`${mark}${mark}rim${mark}`)).toBe('rim')
    expect(plainText(`a${mark}\u202e\n${mark}b`)).toBe('a b')
  })

  it.each([
    'קוטר פנימי 3/8',
    'العرض الكلي',
    '⌀ 🛠️ 👩🏽‍🔧',
    '14\u00a03/8"',
    'naïve — 1′ 2″',
    'ca\u00adme\u0301',
  ])('keeps %s as it is', (text) => {
    expect(plainText(text)).toBe(text)
  })

  it('is one line', () => {
    expect(plainText('  two\r\nlines\tand more\u2028 ')).toBe('two lines and more')
  })
})
