/** A probability as people count: `3 times in a hundred`. Never all of them, for that would be certain. */
export function howOften(p: number): string {
  if (p < 0.001) return 'less than once in a thousand'
  const times = Math.round(100 * p)
  if (times < 1) return 'less than once in a hundred'
  if (times > 99) return 'more than 99 times in a hundred'
  return times === 1 ? 'once in a hundred' : `${times} times in a hundred`
}
