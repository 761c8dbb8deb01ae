/**
 * Glyphs that pass for one another where a stroke is faint, broken or filled with ink: what closes a bow, opens one or
 * loses a hook. Common practice, no source.
 */
const PASS_FOR_ONE_ANOTHER: readonly string[] = [
  '38',
  '17',
  '56',
  '069',
  '0O',
  '08',
  '35',
  '49',
  '68',
  '27',
  '1I',
  '14',
  '5S',
  '8B',
  '2Z',
  'ØO',
  '0Ø',
  "1'",
  '.,',
  '-.',
  '1/',
]

const OTHERS = new Map<string, readonly string[]>()
for (const group of PASS_FOR_ONE_ANOTHER) {
  for (const glyph of group) {
    const others = [...group].filter((other) => other !== glyph)
    OTHERS.set(glyph, [...new Set([...(OTHERS.get(glyph) ?? []), ...others])])
  }
}

/** What a glyph that is doubtful may be instead of what it seems to be; none where nothing resembles it. */
export const confusableGlyphs = (glyph: string): readonly string[] => OTHERS.get(glyph) ?? []
