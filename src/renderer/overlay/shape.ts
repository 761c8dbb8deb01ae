import { algebraicCircle } from '../../core/geometry/algebraic-circle.ts'
import { fitLine } from '../../core/geometry/fit-line.ts'
import { type Pixel, pixel } from '../../core/geometry/frames.ts'
import type { UnnamedMark } from '../../core/job/from-picks/picked-mark.ts'
import { firstPlaces, picksOf } from '../../core/job/picks/picks-of.ts'
import { ScantlingError } from '../../core/words/scantling-error.ts'
import { type Arc, arcOf } from './arc-of.ts'

/** A mark as it is drawn, in pixels of the scan. */
export type MarkShape =
  | { kind: 'point'; at: Pixel }
  | { kind: 'segment'; ends: [Pixel, Pixel] }
  /** arc: what of it is drawn, where that is not all of it. */
  | { kind: 'circle'; centre: Pixel; radius: number; arc?: Arc }
  | { kind: 'path'; pixels: readonly Pixel[]; closed: boolean }

/** Null when the picks do not determine the mark. */
export function shapeOf(mark: UnnamedMark): MarkShape | null {
  try {
    switch (mark.kind) {
      case 'point':
        return { kind: 'point', at: mean(picksOf(mark).map(({ pixel }) => pixel)) }
      case 'line': {
        const [a, b] = fitLine(firstPlaces(mark)).ends
        return { kind: 'segment', ends: [a, b] }
      }
      case 'circle': {
        const places = firstPlaces(mark)
        const { centre, radius } = algebraicCircle(places)
        const arc = mark.stroke?.as === 'arc' ? arcOf(centre, places) : null
        return { kind: 'circle', centre, radius, ...(arc === null ? {} : { arc }) }
      }
      case 'path':
        return firstPlaces(mark).length < 2
          ? null
          : { kind: 'path', pixels: firstPlaces(mark), closed: mark.closed ?? false }
    }
  } catch (error) {
    if (error instanceof ScantlingError) return null
    throw error
  }
}

export function mean(pixels: readonly Pixel[]): Pixel {
  const n = pixels.length
  return pixel(pixels.reduce((s, [x]) => s + x, 0) / n, pixels.reduce((s, [, y]) => s + y, 0) / n)
}

/** Pixels that a shape reaches to. */
export function reach(shape: MarkShape): Pixel[] {
  switch (shape.kind) {
    case 'point':
      return [shape.at]
    case 'segment':
      return shape.ends
    case 'circle': {
      const { centre, radius, arc } = shape
      if (arc !== undefined) return alongArc(centre, radius, arc)
      return [pixel(centre[0] - radius, centre[1] - radius), pixel(centre[0] + radius, centre[1] + radius)]
    }
    case 'path':
      return [...shape.pixels]
  }
}

/** Places along an arc are drawn so far apart at most, radians. */
const STEP = Math.PI / 48

/** Places along part of a circle, from one end to the other. */
export function alongArc(centre: Pixel, radius: number, [from, to]: Arc): Pixel[] {
  const count = Math.max(2, Math.ceil((to - from) / STEP))
  return Array.from({ length: count + 1 }, (_, i) => {
    const angle = from + ((to - from) * i) / count
    return pixel(centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle))
  })
}
