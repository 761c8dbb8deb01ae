import type { AnnotationReason } from '../../../../words/annotations.ts'
import { reason } from '../../../../words/core-words.ts'
import type { UserPoint } from './affine.ts'
import type { SvgShape } from './find-shape.ts'
import { flattenEllipse } from './flatten.ts'
import { pathPoints } from './path-points.ts'
import { numbersIn, svgLength } from './svg-numbers.ts'

/** The corners of a shape in its own units, and what was not kept of it. */
export interface ShapePoints {
  points: UserPoint[]
  remark?: AnnotationReason
}

/** More corners than any outline needs: a few curves could come to any number. */
const MOST_CORNERS = 1_000_000

/** The fewest sides of a polygon that stands for a circle. */
const ROUND = 48

const corners = (x: number, y: number, width: number, height: number): UserPoint[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
]

function pairs(numbers: readonly number[]): UserPoint[] {
  const points: UserPoint[] = []
  for (let k = 0; k + 1 < numbers.length; k += 2) points.push([numbers[k] ?? 0, numbers[k + 1] ?? 0])
  return points
}

/**
 * The corners of a shape, curves as chords; or why it can't be read.
 * @param tolerance how far a chord may lie from its curve, in the units of the shape
 * @param whole the size of the canvas, which lengths may be given in hundredths of
 */
export function shapePoints(
  { name, attributes }: SvgShape,
  tolerance: number,
  whole: { width: number; height: number },
): ShapePoints | { problem: AnnotationReason } {
  const x = (attribute: string): number => svgLength(attributes[attribute] ?? '0', whole.width)
  const y = (attribute: string): number => svgLength(attributes[attribute] ?? '0', whole.height)
  switch (name) {
    case 'rect':
      return { points: corners(x('x'), y('y'), x('width'), y('height')) }
    case 'line':
      return {
        points: [
          [x('x1'), y('y1')],
          [x('x2'), y('y2')],
        ],
      }
    case 'circle':
    case 'ellipse': {
      // Source: SVG 2, section 8.9: hundredths that are neither across nor down are of this.
      const both = Math.hypot(whole.width, whole.height) / Math.SQRT2
      const r = svgLength(attributes['r'] ?? '0', both)
      const points = flattenEllipse(
        [x('cx'), y('cy')],
        name === 'circle' ? [r, r] : [x('rx'), y('ry')],
        tolerance,
        ROUND,
      )
      return { points, remark: reason('annotation.circle-straightened', { sides: points.length }) }
    }
    case 'path': {
      const path = pathPoints(attributes['d'] ?? '', tolerance, MOST_CORNERS)
      if (path === null) return { problem: reason('annotation.malformed-shape') }
      const { points, curved } = path
      if (points.length > MOST_CORNERS) {
        return { problem: reason('annotation.too-many-corners', { most: MOST_CORNERS }) }
      }
      return curved ? { points, remark: reason('annotation.curves-straightened') } : { points }
    }
    default:
      return { points: pairs(numbersIn(attributes['points'] ?? '')) }
  }
}
