import { element } from '../linear-algebra/element.ts'
import type { Mapping } from '../mapping/mapping.ts'
import { distance } from '../measuring/measures/distance.ts'
import { propagate, type Uncertain } from '../uncertainty/uncertain.ts'
import type { StatedSize } from './reference.ts'

/**
 * How a sheet is stretched: ln of the scale along over the scale across, in true size a pixel, so above 0 where the paper
 * has shrunk more along. It is the paper's, and so that of every view on a sheet, whatever scale a view is drawn to.
 */
export interface StretchFound {
  value: number
  /** Derivative by each parameter of the mapping. */
  byParameter: number[]
}

/** What the stretch of a sheet goes by among stated sizes; no reference has so long a name. */
const STRETCH = 'stretch of the sheet'

/** The stretch that a mapping comes to; none where it has one scale. */
function stretchOf({ parameters }: Mapping, theta: readonly number[]): StretchFound {
  const along = parameters.findIndex(({ name }) => name === 'along')
  const across = parameters.findIndex(({ name }) => name === 'across')
  if (along < 0 || across < 0) return { value: 0, byParameter: parameters.map(() => 0) }
  const [a, c] = [element(theta, along), element(theta, across)]
  const byParameter = parameters.map((_, k) => (k === along ? 1 / a : k === across ? -1 / c : 0))
  return { value: Math.log(a / c), byParameter }
}

/** The same with all that makes it uncertain. */
export function uncertainStretch(mapping: Mapping, theta: readonly Uncertain[]): Uncertain {
  const { value, byParameter } = stretchOf(
    mapping,
    theta.map((t) => t.value),
  )
  return propagate(value, theta, byParameter)
}

/** The stretch of a sheet, known from elsewhere, as one more thing that a calibration is to come to. */
export const stretchReference = (stated: Uncertain): StatedSize => ({
  reference: STRETCH,
  equations: [{ features: [], measure: distance, stated, ofParameters: stretchOf }],
})

/** Whether a stated size is a length on the sheet, and not the stretch of it. */
export const isLength = ({ reference }: StatedSize): boolean => reference !== STRETCH
