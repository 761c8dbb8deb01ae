/**
 * The element of a list that must be there.
 * @throws RangeError when the list has no such place: a fault of the program
 */
export function element<T>(list: ArrayLike<T>, i: number): T {
  const found = list[i]
  if (found === undefined) throw new RangeError(`No element ${i} in a list of ${list.length}.`)
  return found
}
