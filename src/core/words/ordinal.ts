/** A position counted from 1, in short: 1st, 2nd, 3rd, 11th. */
export function ordinal(position: number): string {
  const teen = position % 100 >= 11 && position % 100 <= 13
  const ending = teen ? 'th' : (['th', 'st', 'nd', 'rd'][position % 10] ?? 'th')
  return `${position}${ending}`
}
