import { VULGAR_FRACTIONS } from '../vulgar-fractions.ts'

/** Signs that are written in more ways than the network has names. */
const NAMES: Readonly<Record<string, string>> = {
  '’': "'",
  '′': "'",
  '”': '"',
  '″': '"',
  '–': '-',
  '—': '-',
  '−': '-',
  '‑': '-',
  '⁄': '/',
  '⌀': 'Ø',
  º: '°',
  ...VULGAR_FRACTIONS,
}

/** The signs of a figure as they stand on a sheet one after another, by the names that glyphs have; spaces are none. */
export function signsOf(text: string): string[] {
  const named = [...text.toUpperCase()].map((sign) => NAMES[sign] ?? sign).join('')
  return [...named.replaceAll("''", '"')].filter((sign) => sign.trim() !== '')
}

/** Words that say what a size is of, as sheets have them after the size. */
const AFTER_SIZE: readonly [before: RegExp, words: readonly string[]][] = [
  [/Ø\s*/, ['DIA.', 'DIA']],
  [/\bR\.?\s*(?=[\d.])/, ['R', 'RAD.']],
]
const UNIT = /\s*(?:MM|CM|IN\.?|"|'')$/

/** A text and the other ways in which the same figure is commonly written: without its unit, with DIA. or R after the size. */
export function waysToWrite(text: string): string[] {
  const plain = text.toUpperCase()
  const ways = new Set([text])
  for (const way of [plain, plain.replace(UNIT, '')]) {
    ways.add(way)
    for (const [before, words] of AFTER_SIZE)
      if (before.test(way)) for (const word of words) ways.add(`${way.replace(before, '')} ${word}`)
  }
  return [...ways]
}
