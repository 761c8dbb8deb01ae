/** Sum of the products of two lists of one length, from the first to the last; NaN where the second is shorter. */
export function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0
  // No helper takes the elements here: one that every kind of list goes through is too slow for this.
  for (let i = 0; i < a.length; i++) sum += (a[i] ?? Number.NaN) * (b[i] ?? Number.NaN)
  return sum
}
