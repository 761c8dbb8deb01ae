import { element } from './element.ts'

/** Sum of the products of two lists of one length, from the first to the last. */
export function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += element(a, i) * element(b, i)
  return sum
}
