/**
 * The least number of letters to put in, take out, change, or swap with their neighbours, that makes one word of
 * the other; case counts for nothing. (The restricted distance: no part is edited twice.)
 */
export function editDistance(one: string, other: string): number {
  const [a, b] = [one.toLowerCase(), other.toLowerCase()]
  let before: number[] = []
  let row = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const next = [i]
    for (let j = 1; j <= b.length; j++) {
      const change = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1)
      let least = Math.min((row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1, change)
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        least = Math.min(least, (before[j - 2] ?? 0) + 1)
      }
      next.push(least)
    }
    before = row
    row = next
  }
  return row[b.length] ?? 0
}

/** How many slips still make a word a likely miswriting of a known one; short words are too easily hit by chance. */
const slipsIn = (word: string): number => (word.length <= 2 ? 0 : word.length <= 5 ? 1 : 2)

/** The known word that an unknown one was most likely meant to be; undefined when none is near. */
export function nearestWord(
  word: string,
  known: Iterable<string>,
  slips: (known: string) => number = slipsIn,
): string | undefined {
  let nearest: string | undefined
  let least = Number.POSITIVE_INFINITY
  for (const candidate of known) {
    if (Math.abs(candidate.length - word.length) > slips(candidate)) continue
    const distance = editDistance(word, candidate)
    if (distance <= slips(candidate) && distance < least) [nearest, least] = [candidate, distance]
  }
  return nearest
}
