import { element } from './element.ts'

/** A list of numbers that can be written to. */
export interface Numbers {
  readonly length: number
  [i: number]: number
}

/** Adds to one element of a list. */
export function addTo(list: Numbers, i: number, by: number): void {
  list[i] = element(list, i) + by
}

/** Adds `factor` times one list to another of the same length. */
export function addScaled(list: Numbers, factor: number, by: ArrayLike<number>): void {
  for (let i = 0; i < list.length; i++) addTo(list, i, factor * element(by, i))
}
