/** What labels had before in place of the words that they have now. */
const FORMER: readonly (readonly [RegExp, string])[] = [
  [/\bknown size(?= \S)/gi, 'figured size'],
  [/\bfound(?= \S)/gi, 'measured'],
]

/** A text with the present word of each label that somebody calls something by as it was before: `measured 1` of `found 1`. */
export const withPresentWords = (said: string): string =>
  FORMER.reduce((text, [former, present]) => text.replace(former, present), said)
