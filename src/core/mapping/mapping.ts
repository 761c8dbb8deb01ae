import type { Pixel } from '../geometry/frames.ts'
import { GeometryError } from '../geometry/geometry-error.ts'
import type { MappingKind } from '../job/model/types.ts'

/** Where a view lies on its page; it keeps the parameters of every mapping near 1 in size. */
export interface ViewFrame {
  /** Pixel that is mapped to the true origin. */
  origin: Pixel
  /** Half the extent of what is known of the view, pixels; tilts are stated for this distance. */
  extent: number
  /** Direction of the sheet's horizontal edge in pixels, radians. */
  grain: number
}

/** A true point with its derivatives. */
export interface Mapped {
  x: number
  y: number
  /** ∂x/∂px, ∂x/∂py, ∂y/∂px, ∂y/∂py */
  byPixel: readonly [number, number, number, number]
  /** ∂x/∂θ0, ∂y/∂θ0, ∂x/∂θ1, … */
  byParameter: readonly number[]
}

/**
 * A way from pixels to true size (mm), up to a rigid motion.
 * θ: stretches in mm per pixel; tilts as the relative change of scale over `extent`.
 */
export interface Mapping {
  kind: MappingKind
  parameters: readonly string[]
  /** θ for one scale all over. */
  start(scale: number): number[]
  apply(theta: ArrayLike<number>, pixel: Pixel, frame: ViewFrame): Mapped
}

const at = (theta: ArrayLike<number>, i: number): number => theta[i] as number

const uniform: Mapping = {
  kind: 'uniform',
  parameters: ['scale'],
  start: (scale) => [scale],
  apply(theta, pixel, { origin }) {
    const s = at(theta, 0)
    const u = pixel[0] - origin[0]
    const v = pixel[1] - origin[1]
    return { x: s * u, y: s * v, byPixel: [s, 0, 0, s], byParameter: [u, v] }
  },
}

/** One scale along and one across the grain of the paper. */
const twoAxis: Mapping = {
  kind: 'two-axis',
  parameters: ['along', 'across'],
  start: (scale) => [scale, scale],
  apply(theta, pixel, { origin, grain }) {
    const along = at(theta, 0)
    const across = at(theta, 1)
    const c = Math.cos(grain)
    const s = Math.sin(grain)
    const u = c * (pixel[0] - origin[0]) + s * (pixel[1] - origin[1])
    const v = c * (pixel[1] - origin[1]) - s * (pixel[0] - origin[0])
    return {
      x: along * u,
      y: across * v,
      byPixel: [along * c, along * s, -across * s, across * c],
      byParameter: [u, 0, 0, v],
    }
  },
}

/** A symmetric stretch: any affine mapping is one after a rotation (polar decomposition). */
const affine: Mapping = {
  kind: 'affine',
  parameters: ['along', 'skew', 'across'],
  start: (scale) => [scale, 0, scale],
  apply(theta, pixel, { origin }) {
    const a = at(theta, 0)
    const b = at(theta, 1)
    const c = at(theta, 2)
    const u = pixel[0] - origin[0]
    const v = pixel[1] - origin[1]
    return {
      x: a * u + b * v,
      y: b * u + c * v,
      byPixel: [a, b, b, c],
      byParameter: [u, 0, v, u, 0, v],
    }
  },
}

/** Relative distance from the vanishing line, 1 at the origin, below which a plane is seen too flat to measure. */
const HORIZON = 0.1

/** A plane seen from anywhere: the symmetric stretch at the origin and two tilts. */
const projective: Mapping = {
  kind: 'projective',
  parameters: ['along', 'skew', 'across', 'tilt_x', 'tilt_y'],
  start: (scale) => [scale, 0, scale, 0, 0],
  apply(theta, pixel, { origin, extent }) {
    const a = at(theta, 0)
    const b = at(theta, 1)
    const c = at(theta, 2)
    const p = at(theta, 3) / extent
    const q = at(theta, 4) / extent
    const u = pixel[0] - origin[0]
    const v = pixel[1] - origin[1]
    const w = 1 + p * u + q * v
    if (!(w > HORIZON)) {
      throw new GeometryError(
        'A mark lies at or beyond the horizon of this view as its references place it: check the references, or pick nearer to them.',
      )
    }
    const x = (a * u + b * v) / w
    const y = (b * u + c * v) / w
    return {
      x,
      y,
      byPixel: [(a - x * p) / w, (b - x * q) / w, (b - y * p) / w, (c - y * q) / w],
      byParameter: [
        u / w,
        0,
        v / w,
        u / w,
        0,
        v / w,
        (-x * u) / (w * extent),
        (-y * u) / (w * extent),
        (-x * v) / (w * extent),
        (-y * v) / (w * extent),
      ],
    }
  },
}

/** Every mapping, from the simplest to the richest. */
export const MAPPINGS: Record<MappingKind, Mapping> = { uniform, 'two-axis': twoAxis, affine, projective }

/** Size by which a change of a parameter is judged: the scale for stretches, 1 for tilts. */
export const parameterSize = (mapping: Mapping, k: number, scale: number): number =>
  mapping.parameters[k]?.startsWith('tilt') ? 1 : scale

/** The largest of the parameters' standard uncertainties, as shares of their sizes. */
export const worstRelative = (mapping: Mapping, scale: number, us: readonly number[]): number =>
  Math.max(...us.map((u, k) => u / parameterSize(mapping, k, scale)))
