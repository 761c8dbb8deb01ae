const INVISIBLE = /^[\p{Mn}\p{Me}\p{Cf}]$/u
const WIDE =
  /^[\p{sc=Han}\p{sc=Hiragana}\p{sc=Katakana}\p{sc=Hangul}\u3000-\u303e\uff01-\uff60\uffe0-\uffe6]$/u
const PICTURE = /^\p{Emoji_Presentation}$/u

/** How many columns of a terminal a text takes: combining marks none, East Asian characters two (after UAX #11). */
export function displayWidth(text: string): number {
  let width = 0
  for (const character of text) {
    if (INVISIBLE.test(character)) continue
    width += WIDE.test(character) || PICTURE.test(character) ? 2 : 1
  }
  return width
}

/** Pads with spaces on the right to so many columns; longer text is left as it is. */
export const padEnd = (text: string, width: number): string =>
  text + ' '.repeat(Math.max(0, width - displayWidth(text)))

/** Pads with spaces on the left to so many columns. */
export const padStart = (text: string, width: number): string =>
  ' '.repeat(Math.max(0, width - displayWidth(text))) + text
