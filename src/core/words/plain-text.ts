/**
 * Text as one line that can be shown anywhere: line and paragraph breaks, control characters (terminal escapes among
 * them, C1 too) and marks that set the direction of writing (Unicode Annex 9, section 2) become a space.
 */
export const plainText = (text: string): string =>
  text.replace(/[\p{Cc}\p{Bidi_Control}\u2028\u2029]+/gu, ' ').trim()
