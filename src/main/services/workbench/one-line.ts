const LONGEST = 400

/** A text for a log: one line, of a length that nobody can stretch. */
export function oneLine(text: string): string {
  const plain = text
    .slice(0, 4 * LONGEST)
    .replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]+/gu, ' ')
    .trim()
  return plain.length > LONGEST ? `${plain.slice(0, LONGEST)}…` : plain
}
