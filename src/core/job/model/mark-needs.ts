import type { QuantityKind } from '../../quantity/quantity-kind.ts'
import type { Mark, Measure } from './types.ts'

/** A kind of mark that a measure or a reference takes. */
export type MarkNeed = 'point' | 'line' | 'circle' | 'path' | 'closed path'

/** Fewest picks that settle a mark of each kind; a path may have more. */
export const FEWEST_PICKS: Readonly<Record<MarkNeed, number>> = {
  point: 1,
  line: 2,
  circle: 3,
  path: 2,
  'closed path': 3,
}

/** What each measure is taken between: the kinds of mark, in any of these orders. */
export const MEASURE_NEEDS: Readonly<Record<Measure, readonly (readonly MarkNeed[])[]>> = {
  distance: [['point', 'point']],
  spacing: [
    ['line', 'line'],
    ['line', 'point'],
    ['point', 'line'],
  ],
  diameter: [['circle']],
  radius: [['circle']],
  centres: [['circle', 'circle']],
  'slot-width': [['circle', 'circle']],
  'slot-length': [['circle', 'circle']],
  angle: [['line', 'line']],
  run: [['path']],
  area: [['closed path']],
}

/** What each kind of reference is known between. */
export const REFERENCE_NEEDS: Readonly<Record<'distance' | 'diameter' | 'rectangle', readonly MarkNeed[]>> = {
  distance: ['point', 'point'],
  diameter: ['circle'],
  rectangle: ['point', 'point', 'point', 'point'],
}

/** What kind of dimension a measure gives. */
export function kindOfMeasure(measure: Measure): QuantityKind {
  return measure === 'angle' || measure === 'area' ? measure : 'length'
}

/** Whether a mark is of the kind that is needed; a closed path is also a path. */
export function meets(mark: Mark, need: MarkNeed): boolean {
  if (need === 'closed path') return mark.kind === 'path' && mark.closed === true
  return mark.kind === need
}
