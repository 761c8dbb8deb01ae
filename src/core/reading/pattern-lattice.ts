import { NotationError } from '../quantity/notation/notation-error.ts'
import { reason } from '../words/core-words.ts'
import { confusableGlyphs } from './confusable-glyphs.ts'
import type { Lattice, LatticeSlot } from './lattice.ts'
import { VULGAR_FRACTIONS } from './vulgar-fractions.ts'

type Alternatives = LatticeSlot['alternatives']

const DIGITS = '0123456789'
/** What stands in a size beside its digits. */
const SIGNS = '/.-\'"ØR'
const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'

/** Glyphs; the longest call-outs on one line have half as many. */
const LONGEST = 80

/** How likely a doubtful glyph is what it seems to be, where something resembles it. Common practice, no source. */
const AS_IT_SEEMS = 0.6

const evenly = (glyphs: Iterable<string>): Alternatives => {
  const all = [...new Set(glyphs)]
  return all.map((text) => ({ text, probability: 1 / all.length }))
}

/** In a size, whatever glyph stands in sizes: each alike, for how often each does is another question than what is seen. */
const ANYTHING_IN_A_SIZE = evenly(DIGITS + SIGNS)
const ANY_LETTER = evenly(LETTERS)

/** Whether a glyph between two texts is one of a word: a lone letter at one side of it, as R or X, makes none. */
const isInWord = (before: string, after: string): boolean =>
  /[A-Z]{2}$/i.test(before) || /^[A-Z]{2}/i.test(after) || (/[A-Z]$/i.test(before) && /^[A-Z]/i.test(after))

/** A glyph of which little can be seen: what it seems to be, and what passes for it. */
function doubtful(glyph: string): Alternatives {
  const others = confusableGlyphs(glyph)
  if (others.length === 0) return [{ text: glyph, probability: 1 }]
  const each = (1 - AS_IT_SEEMS) / others.length
  return [{ text: glyph, probability: AS_IT_SEEMS }, ...others.map((text) => ({ text, probability: each }))]
}

/**
 * What can be made out of a figure, as a lattice: `?` for one glyph that cannot be made out (`1?-3/8`, `?' 2 1/4`), a
 * doubtful one in brackets, either with all that it could be (`1 [38]/8`) or as it seems (`[3]`: a 3, or what passes for
 * one, see `confusableGlyphs`), and everything else as it stands. In a word `?` is a letter, otherwise a digit or a sign
 * that stands in sizes.
 * @throws NotationError that shows where in the pattern it stopped
 */
export function patternLattice(pattern: string): Lattice {
  const stop = (at: number, why: Parameters<typeof reason>[0]) =>
    new NotationError(pattern, at, reason(why as 'pattern.empty'))
  if (pattern.trim() === '') throw stop(0, 'pattern.empty')
  const glyphs = [...pattern]
  const slots: LatticeSlot[] = []
  let at = 0
  for (let i = 0; i < glyphs.length; i++) {
    const glyph = glyphs[i] ?? ''
    if (glyph === ']') throw stop(at, 'pattern.bracket-stray')
    if (glyph === '[') {
      const close = glyphs.indexOf(']', i)
      if (close < 0) throw stop(at, 'pattern.bracket-open')
      const between = glyphs.slice(i + 1, close)
      if (between.length === 0) throw stop(at, 'pattern.bracket-empty')
      const bad = between.findIndex((g) => g === '[' || g === '?')
      if (bad >= 0) throw stop(at + 1 + between.slice(0, bad).join('').length, 'pattern.bracket-in-bracket')
      const [only] = between
      slots.push({
        alternatives: between.length === 1 && only !== undefined ? doubtful(only) : evenly(between),
      })
      at += between.join('').length + 2
      i = close
    } else {
      if (glyph === '?') {
        const inWord = isInWord(pattern.slice(0, at), pattern.slice(at + 1))
        slots.push({ alternatives: inWord ? ANY_LETTER : ANYTHING_IN_A_SIZE })
      } else slots.push(...asItStands(glyph, glyphs[i - 1]))
      at += glyph.length
    }
    if (slots.length > LONGEST) {
      throw new NotationError(pattern, at, reason('pattern.too-long', { most: LONGEST }))
    }
  }
  return { slots }
}

const only = (text: string): LatticeSlot => ({ alternatives: [{ text, probability: 1 }] })

function asItStands(glyph: string, before: string | undefined): LatticeSlot[] {
  const fraction = VULGAR_FRACTIONS[glyph]
  if (fraction === undefined) return [only(glyph)]
  // `14⅜`: the whole number ends where the fraction begins.
  const gap = before !== undefined && /[\d?\]]/.test(before) ? ' ' : ''
  return [...(gap + fraction)].map(only)
}
