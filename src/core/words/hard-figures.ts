/** What is said of a figure that is hard to read: of the pattern of what can be made out of it. */
import type { Catalogue } from './reason.ts'

export const HARD_FIGURE_WORDS = {
  'pattern.empty': () => 'Write what can be made out, with ? for each glyph that cannot: 1?-3/8.',
  'pattern.bracket-open': () =>
    'A bracket [ is opened here and never closed: put what one glyph could be between [ and ], as in 1 [38]/8.',
  'pattern.bracket-stray': () => 'No bracket [ is open here; put what one glyph could be between [ and ].',
  'pattern.bracket-empty': () => 'Between [ and ] stands nothing: write what the glyph could be, or ? alone.',
  'pattern.bracket-in-bracket': () =>
    'What one glyph could be stands between [ and ] as glyphs alone; write ? for one that could be anything outside of them.',
  'pattern.too-long': (p: { most: number }) =>
    `A figure of more than ${p.most} glyphs is more than one; write one at a time.`,
} as const satisfies Catalogue
