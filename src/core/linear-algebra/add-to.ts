/** A list of numbers that can be written to. */
export interface Numbers {
  readonly length: number
  [i: number]: number
}

/** Adds to one element of a list; it becomes NaN where there was none. */
export function addTo(list: Numbers, i: number, by: number): void {
  list[i] = (list[i] ?? Number.NaN) + by
}

/** Adds `factor` times one list to another of the same length; NaN where the first is shorter. */
export function addScaled(list: Numbers, factor: number, by: ArrayLike<number>): void {
  // No helper takes the elements here: one that every kind of list goes through is too slow for this.
  for (let i = 0; i < list.length; i++) {
    list[i] = (list[i] ?? Number.NaN) + factor * (by[i] ?? Number.NaN)
  }
}
