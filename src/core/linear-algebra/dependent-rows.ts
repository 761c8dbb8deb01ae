import { addScaled } from './add-to.ts'
import { dot } from './dot.ts'

/** A row that others make up: Σ combination[j] · rows[j] is next to nothing, with combination[row] = 1. */
export interface DependentRow {
  row: number
  combination: number[]
}

/** A direction that some rows span, and how they make it up. */
interface Direction {
  unit: Float64Array
  combination: Float64Array
}

/**
 * The rows that those before them make up, each with how: Gram–Schmidt in the order of the rows, twice over, for once
 * leaves rounding behind where rows are nearly alike.
 * @param isNothing whether what is left of a row, of this length, counts as nothing, given the combination it is left of
 */
export function dependentRows(
  rows: readonly Float64Array[],
  isNothing: (combination: Float64Array, length: number) => boolean,
): DependentRow[] {
  const basis: Direction[] = []
  const dependent: DependentRow[] = []
  rows.forEach((row, i) => {
    const rest = Float64Array.from(row)
    const combination = new Float64Array(rows.length)
    combination[i] = 1
    for (let pass = 0; pass < 2; pass++) {
      for (const { unit, combination: made } of basis) {
        const along = dot(unit, rest)
        addScaled(rest, -along, unit)
        addScaled(combination, -along, made)
      }
    }
    const length = Math.hypot(...rest)
    if (isNothing(combination, length)) dependent.push({ row: i, combination: [...combination] })
    else if (length > 0)
      basis.push({ unit: rest.map((v) => v / length), combination: combination.map((v) => v / length) })
  })
  return dependent
}
