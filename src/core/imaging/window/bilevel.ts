import { type GreyPicture, windowsOf } from './grey-picture.ts'

/** Whether a picture has two grey values at most, as scans of one bit have. */
export const isBilevel = (picture: GreyPicture): boolean =>
  hasTwoValues(...windowsOf(picture).map(({ data }) => data))

/** Whether there are just two values among all of these. */
export function hasTwoValues(...arrays: readonly ArrayLike<number>[]): boolean {
  const seen: number[] = []
  return arrays.every((array) => addValues(array, seen)) && seen.length === 2
}

/** Adds the values that are new to those seen. @returns whether these are no more than two */
function addValues(array: ArrayLike<number>, seen: number[]): boolean {
  let [first, other] = seen
  for (let i = 0; i < array.length; i++) {
    const v = array[i]
    if (v === first || v === other || v === undefined) continue
    if (other !== undefined) return false
    if (first === undefined) first = v
    else other = v
    seen.push(v)
  }
  return true
}
