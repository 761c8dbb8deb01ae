/** What a dimension can be of. */
export const QUANTITY_KINDS = ['length', 'angle', 'area', 'count'] as const

/** Lengths are computed in mm, angles in radians, areas in mm²; a count has no unit. */
export type QuantityKind = (typeof QUANTITY_KINDS)[number]
