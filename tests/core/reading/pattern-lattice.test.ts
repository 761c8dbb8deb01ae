import { describe, expect, it } from 'vitest'
import { confusableGlyphs } from '../../../src/core/reading/confusable-glyphs.ts'
import { patternLattice } from '../../../src/core/reading/pattern-lattice.ts'

const texts = (pattern: string) =>
  patternLattice(pattern).slots.map(({ alternatives }) => alternatives.map(({ text }) => text).join(''))

describe('a pattern of what can be made out', () => {
  it('has one slot a glyph, with everything that stands in sizes where none can be made out', () => {
    expect(texts('1?-3/8')).toEqual(['1', '0123456789/.-\'"ØR', '-', '3', '/', '8'])
    expect(texts("?' 2 1/4").slice(1)).toEqual(["'", ' ', '2', ' ', '1', '/', '4'])
  })

  it('has letters in a word, and none beside a lone one', () => {
    const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'
    for (const [pattern, at] of [
      ['HO?ES', 2],
      ['?RILL', 0],
      ['4 HOLE?', 6],
      ['D?A.', 1],
    ] as const) {
      expect(texts(pattern)[at], pattern).toBe(letters)
    }
    for (const pattern of ['R?/8', 'Ø?/8', '4X?/8', '3?R'])
      expect(texts(pattern).join(''), pattern).not.toContain(letters)
  })

  it('keeps a whole number from the fraction in one character after it', () => {
    expect(texts('14⅜')).toEqual(['1', '4', ' ', '3', '/', '8'])
    expect(texts('⅜')).toEqual(['3', '/', '8'])
  })

  it('has what stands in brackets as one glyph, alike where there are several', () => {
    expect(patternLattice('1 [38]/8').slots[2]).toEqual({
      alternatives: [
        { text: '3', probability: 0.5 },
        { text: '8', probability: 0.5 },
      ],
    })
  })

  it('takes one glyph in brackets for what it seems, or for what passes for it', () => {
    const [slot] = patternLattice('[3]').slots
    expect(slot?.alternatives[0]?.text).toBe('3')
    expect(slot?.alternatives.slice(1).map(({ text }) => text)).toEqual(confusableGlyphs('3'))
    expect(texts('[~]')).toEqual(['~'])
  })

  it('leaves no probability over', () => {
    for (const { alternatives } of patternLattice('?[3][38]A?1').slots) {
      expect(alternatives.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 12)
    }
  })

  it('says in words what is wrong with it, and where', () => {
    const stops: readonly [string, string][] = [
      ['  ', 'Write what can be made out'],
      ['1 [38/8', 'is opened here and never closed'],
      ['1 38]', 'No bracket [ is open here'],
      ['1 []/8', 'stands nothing'],
      ['1 [3?]/8', 'stands between [ and ] as glyphs alone'],
      ['1'.repeat(81), 'more than 80 glyphs'],
    ]
    for (const [pattern, words] of stops) expect(() => patternLattice(pattern), pattern).toThrow(words)
    expect(() => patternLattice('1 [3?]/8')).toThrow('character 5')
  })
})

it('what passes for another glyph goes both ways', () => {
  for (const glyph of "0123456789OISBZØ'.,-/") {
    for (const other of confusableGlyphs(glyph))
      expect(confusableGlyphs(other), `${glyph} ${other}`).toContain(glyph)
  }
})
