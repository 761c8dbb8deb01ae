/** A probability as people count: `3 times in a hundred`. */
export function howOften(p: number): string {
  if (p < 0.001) return 'less than once in a thousand'
  const times = Math.round(100 * p)
  if (times < 1) return 'less than once in a hundred'
  return times === 1 ? 'once in a hundred' : `${times} times in a hundred`
}
