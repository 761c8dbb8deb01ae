import { element } from '../linear-algebra/element.ts'

/**
 * What a parameter does to the sheet: `scale`, mm per pixel, sizes it one way or all over; `skew`, mm per pixel, shears
 * it; `tilt`, relative change of scale over the extent of the frame, lays it off the plane of the picture.
 */
export type ParameterRole = 'scale' | 'skew' | 'tilt'

/** One of the numbers that a mapping is determined by. */
export interface Parameter {
  /** As the table calls it. */
  name: string
  role: ParameterRole
}

/** Whether a parameter is in mm per pixel; the others have no unit. */
export const isPerPixel = ({ role }: Parameter): boolean => role !== 'tilt'

/** Size by which a change of a parameter is judged: `scale` for those in mm per pixel, 1 for tilts. */
export const parameterSize = (parameter: Parameter, scale: number): number =>
  isPerPixel(parameter) ? scale : 1

/**
 * The largest of the parameters' standard uncertainties, as shares of their sizes.
 * @param us standard uncertainties, one for each parameter
 */
export const worstRelative = (
  parameters: readonly Parameter[],
  scale: number,
  us: readonly number[],
): number => Math.max(...parameters.map((p, k) => element(us, k) / parameterSize(p, scale)))

/**
 * One of the numbers that a mapping is given for its parameters. Mappings read them by nothing else: a helper for lists
 * of every form would be slow here, where each pick of each trial comes by.
 * @throws RangeError when there are fewer
 */
export function parameterAt(theta: readonly number[], k: number): number {
  const value = theta[k]
  if (value === undefined)
    throw new RangeError(`A mapping was given ${theta.length} parameters and needs more.`)
  return value
}
