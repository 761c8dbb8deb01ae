/**
 * Gives ids `M12`, `M13`, … one after the other, after the highest number that is taken with that letter.
 * @param taken ids in use; others than letter and number don't matter
 */
export function freshIds(letter: string, taken: Iterable<string>): () => string {
  let highest = 0
  for (const id of taken) {
    const digits = id.startsWith(letter) ? id.slice(letter.length) : ''
    if (/^\d{1,12}$/.test(digits)) highest = Math.max(highest, Number(digits))
  }
  return () => `${letter}${++highest}`
}

/** One id after the highest that is taken. */
export const freshId = (letter: string, taken: Iterable<string>): string => freshIds(letter, taken)()
