import type { QuantityKind } from '../../quantity/quantity-kind.ts'

/** Below this, sizes are about as common as each other; beyond it, the rarer the larger. mm. Common practice, no source. */
const SMALL = 25.4
/** Larger than anything that is drawn as one piece, mm. */
const LARGEST = 25_400

const ALL = Math.log((LARGEST + SMALL) / SMALL)

/** Density of the sizes of things, per mm: alike in proportion from an inch up. */
export const densityOfSize = (mm: number): number =>
  mm < 0 || mm > LARGEST ? 1e-9 : 1 / ((mm + SMALL) * ALL)

/**
 * Density of the values that a figure may have, before anything is known of it but its kind.
 * @param value mm, mm², radians or how many; the density is per unit of it
 */
export function densityOfValue(value: number, kind: QuantityKind): number {
  switch (kind) {
    case 'length':
      return densityOfSize(value)
    case 'area':
      // As many in proportion: of a square, that of its side.
      return densityOfSize(Math.sqrt(Math.max(0, value))) / (2 * Math.max(1, Math.sqrt(Math.max(0, value))))
    case 'angle':
      return 1 / Math.PI
    case 'count':
      return 1 / ((value + 1) * (value + 2))
  }
}
