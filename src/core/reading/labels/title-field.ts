import type { WordRow } from './word-rows.ts'

/** What a title block says of its drawing. */
export const TITLE_FIELDS = ['title', 'scale', 'number', 'date', 'material', 'drawn-by'] as const

/** A field of a title block. */
export type TitleField = (typeof TITLE_FIELDS)[number]

/**
 * The words that stand at a field in English title blocks, in capitals, without what ends them. The small o of "No" is
 * raised as a rule, and is then read as anything. Common practice, no source.
 */
const WORDS: Readonly<Record<TitleField, RegExp>> = {
  title: /^TITLE$/,
  scale: /^SCALES?$/,
  number: /^(?:DRAWING|DRAWG|DRG|DWG|PLAN)S? (?:N\S{0,2}|NUMBER)$/,
  date: /^DATED?$/,
  material: /^(?:MATERIALS?|MAT'?L)$/,
  'drawn-by': /^(?:DRAWN|DRN)(?: BY)?$/,
}

/** The most words of a label. */
const MOST = 2

const bare = (text: string): string => text.toUpperCase().replace(/[:;.,=-]+$/, '')

/** The label that begins at a word of a row, and how many words it has; undefined: none does. */
export function labelAt(row: WordRow, from: number): { field: TitleField; words: number } | undefined {
  for (let words = MOST; words >= 1; words--) {
    if (from + words > row.length) continue
    const text = row
      .slice(from, from + words)
      .map((word) => bare(word.text))
      .join(' ')
    const field = TITLE_FIELDS.find((one) => WORDS[one].test(text))
    if (field !== undefined) return { field, words }
  }
  return undefined
}
