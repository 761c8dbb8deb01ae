/**
 * Text as one line that can be shown anywhere: control characters (line breaks, terminal escapes, marks that
 * reverse the direction of writing) become a space.
 */
export const plainText = (text: string): string =>
  text.replace(/[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]+/gu, ' ').trim()
