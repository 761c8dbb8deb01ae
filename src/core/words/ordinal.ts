/** A position counted from 1, in short: 1st, 2nd, 3rd, 11th. */
export function ordinal(position: number): string {
  const teen = position % 100 >= 11 && position % 100 <= 13
  const ending = teen ? 'th' : (['th', 'st', 'nd', 'rd'][position % 10] ?? 'th')
  return `${position}${ending}`
}

const WORDS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth']

/** The same in words, as far as people write them: second, tenth, 11th. */
export const ordinalInWords = (position: number): string => WORDS[position - 1] ?? ordinal(position)
