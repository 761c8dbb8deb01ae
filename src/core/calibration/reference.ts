import type { Measured } from '../geometry/polygon.ts'
import { element } from '../linear-algebra/element.ts'
import type { Mapping } from '../mapping/mapping.ts'
import type { Feature } from '../measuring/features/feature-of-mark.ts'
import { diameter } from '../measuring/measures/diameter.ts'
import { distance } from '../measuring/measures/distance.ts'
import type { TrueMeasure } from '../measuring/measures/true-measure.ts'
import type { Uncertain } from '../uncertainty/uncertain.ts'

/** Which stated size of a rectangle: a reference of another kind has but one. */
export type ReferencePart = 'width' | 'height' | 'squareness'

/** One equation of the calibration: a measure whose true value is stated. */
export interface Equation {
  features: readonly Feature[]
  measure: TrueMeasure
  /** mm */
  stated: Uncertain
  /** Where it is no measure of features but of the parameters themselves; then it has its own unit. */
  ofParameters?: (mapping: Mapping, theta: readonly number[]) => { value: number; byParameter: number[] }
}

/** A stated size that may be wrong, and the equations that rest on it. */
export interface StatedSize {
  reference: string
  part?: ReferencePart
  equations: readonly Equation[]
  /** Last graduation that the size is written to, mm; nothing is known of it where this is left out. */
  graduation?: number | undefined
}

/**
 * A known distance between two points.
 * @param id of the reference, as results name it
 * @param stated mm, above 0
 * @param graduation last one that the size is written to, mm
 */
export function distanceReference(
  id: string,
  a: Feature,
  b: Feature,
  stated: Uncertain,
  graduation?: number,
): StatedSize[] {
  return [{ reference: id, equations: [{ features: [a, b], measure: distance, stated }], graduation }]
}

/**
 * A known diameter of a circle.
 * @param id of the reference, as results name it
 * @param stated mm, above 0
 * @param graduation last one that the size is written to, mm
 */
export function diameterReference(
  id: string,
  circle: Feature,
  stated: Uncertain,
  graduation?: number,
): StatedSize[] {
  return [{ reference: id, equations: [{ features: [circle], measure: diameter, stated }], graduation }]
}

/**
 * A rectangle gives five independent equations, as many as the shape of four points has:
 * its width twice, its height twice, and that its diagonals are equal.
 * @param id of the reference, as results name it
 * @param corners in order round the rectangle; the first side is the width
 * @param width and height: mm, above 0
 * @param square difference of the diagonals, mm: 0, with what it is uncertain by
 * @param graduations last ones that width and height are written to, mm
 */
export function rectangleReference(
  id: string,
  corners: readonly [Feature, Feature, Feature, Feature],
  width: Uncertain,
  height: Uncertain,
  square: Uncertain,
  graduations: readonly [width?: number, height?: number] = [],
): StatedSize[] {
  const [a, b, c, d] = corners
  const [ofWidth, ofHeight] = graduations
  const side = (p: Feature, q: Feature, stated: Uncertain): Equation => ({
    features: [p, q],
    measure: distance,
    stated,
  })
  return [
    { reference: id, part: 'width', equations: [side(a, b, width), side(c, d, width)], graduation: ofWidth },
    {
      reference: id,
      part: 'height',
      equations: [side(b, c, height), side(d, a, height)],
      graduation: ofHeight,
    },
    {
      reference: id,
      part: 'squareness',
      equations: [{ features: corners, measure: differenceOfDiagonals, stated: square }],
      // As square as the figures are fine.
      graduation: ofWidth,
    },
  ]
}

/** Length of the diagonal a–c less that of b–d. */
const differenceOfDiagonals: TrueMeasure = (shapes): Measured => {
  const ac = distance([element(shapes, 0), element(shapes, 2)])
  const bd = distance([element(shapes, 1), element(shapes, 3)])
  const less = bd.gradient.map((g) => -g)
  return {
    value: ac.value - bd.value,
    gradient: [...ac.gradient.slice(0, 2), ...less.slice(0, 2), ...ac.gradient.slice(2), ...less.slice(2)],
  }
}
