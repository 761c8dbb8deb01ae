import type { Pixel, True } from '../geometry/frames.ts'
import type { MappingKind } from '../job/model/types.ts'
import type { Parameter } from './parameter.ts'
import type { ViewFrame } from './view-frame.ts'

/** A true point with its derivatives. */
export interface Mapped {
  point: True
  /** ∂x/∂px, ∂x/∂py, ∂y/∂px, ∂y/∂py, mm per pixel */
  byPixel: readonly [number, number, number, number]
  /** ∂x/∂θ0, ∂y/∂θ0, ∂x/∂θ1, … */
  byParameter: readonly number[]
}

/**
 * A way from pixels to true size (mm), up to a rigid motion, and back.
 * θ: one number for each of `parameters`, in their order and units.
 */
export interface Mapping {
  kind: MappingKind
  parameters: readonly Parameter[]
  /** θ for one scale all over, mm per pixel. */
  start(scale: number): number[]
  /**
   * Where a pixel lies in true size.
   * @throws GeometryError where the mapping has no true point for it
   */
  apply(theta: readonly number[], pixel: Pixel, frame: ViewFrame): Mapped
  /**
   * The pixel that `apply` takes to a true point, in closed form.
   * @throws GeometryError where no pixel is, or every one on a line, because a scale is 0
   */
  invert(theta: readonly number[], point: True, frame: ViewFrame): Pixel
}
