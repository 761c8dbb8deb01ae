const LONGEST = 400

/** A text for a log: one line, of a length that nobody can stretch, so that no text writes lines of its own. */
export function oneLine(text: string, longest: number = LONGEST): string {
  const plain = text
    .slice(0, 4 * longest)
    .replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]+/gu, ' ')
    .trim()
  return plain.length > longest ? `${plain.slice(0, longest)}…` : plain
}
