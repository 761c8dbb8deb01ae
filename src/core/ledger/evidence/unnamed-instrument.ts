import { degrees, toRadians } from '../../geometry/angle-units.ts'
import type { QuantityKind } from '../../quantity/quantity-kind.ts'

/**
 * What may be off by an instrument that nobody named, held against an old part: a tenth of a millimetre, a quarter of a
 * degree; mm or radians. Common practice, no source: a vernier caliper keeps to half of that, a rule is read no better.
 */
export const unnamedLimit = (kind: QuantityKind): number =>
  kind === 'length' ? 0.1 : kind === 'angle' ? QUARTER_DEGREE : 0

const QUARTER_DEGREE = toRadians(degrees(0.25))
