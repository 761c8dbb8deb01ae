/**
 * Measures: pure functions of features in true size (mm), each with its derivative by every coordinate.
 */
import { type CircleFit, fitCircle } from '../geometry/fit-circle.ts'
import type { Point } from '../geometry/frames.ts'
import { GeometryError } from '../geometry/geometry-error.ts'
import { crossesItself, type Measured, pathLength, polygonArea } from '../geometry/polygon.ts'
import type { MarkKind, Measure } from '../job/types.ts'

/** A feature after mapping: its points in true size. */
export interface Shape {
  mark: string
  kind: MarkKind
  points: readonly Point[]
  closed: boolean
}

/**
 * Value in mm, mm² or radians; gradient over the points of all shapes in order: x0, y0, x1, …
 * Throws GeometryError where there is nothing to measure.
 */
export type TrueMeasure = (shapes: readonly Shape[]) => Measured

/** Lines further from parallel than this have no one spacing. */
const PARALLEL_WITHIN = (5 * Math.PI) / 180

const pointAt = (shape: Shape | undefined, i: number): Point => {
  const p = shape?.points[i]
  if (p === undefined) throw new GeometryError('A mark is missing from the measure.')
  return p
}

export const distance: TrueMeasure = ([a, b]) => between(pointAt(a, 0), pointAt(b, 0))

function between(p: Point, q: Point): Measured {
  const dx = q[0] - p[0]
  const dy = q[1] - p[1]
  const value = Math.sqrt(dx * dx + dy * dy)
  if (value === 0) throw new GeometryError('The two points are one and the same, so there is no distance.')
  const ux = dx / value
  const uy = dy / value
  return { value, gradient: [-ux, -uy, ux, uy] }
}

interface Direction {
  ux: number
  uy: number
  length: number
}

function directionOf(line: Shape): Direction {
  const [p, q] = [pointAt(line, 0), pointAt(line, 1)]
  const length = Math.hypot(q[0] - p[0], q[1] - p[1])
  return { ux: (q[0] - p[0]) / length, uy: (q[1] - p[1]) / length, length }
}

/** Derivative of a line's direction angle by its two ends: x0, y0, x1, y1. */
const turning = ({ ux, uy, length }: Direction): number[] => [
  uy / length,
  -ux / length,
  -uy / length,
  ux / length,
]

const middle = (line: Shape): Point => {
  const [p, q] = [pointAt(line, 0), pointAt(line, 1)]
  return [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2]
}

/** Perpendicular distance between two lines' middles, across their mean direction; or of a point from a line. */
export const spacing: TrueMeasure = (shapes) => {
  const [a, b] = shapes
  if (a === undefined || b === undefined) throw new GeometryError('A spacing needs two marks.')
  if (a.kind !== 'point') return b.kind === 'point' ? pointFromLine(a, pointAt(b, 0)) : lineFromLine(a, b)
  const { value, gradient } = pointFromLine(b, pointAt(a, 0))
  return { value, gradient: [...gradient.slice(4), ...gradient.slice(0, 4)] }
}

function pointFromLine(line: Shape, point: Point): Measured {
  const d = directionOf(line)
  const { value, sign, along, normal } = across(d.ux, d.uy, middle(line), point)
  return {
    value,
    gradient: [...endMoves(normal, turning(d), -sign / 2, -sign * along), sign * normal[0], sign * normal[1]],
  }
}

function lineFromLine(a: Shape, b: Shape): Measured {
  const da = directionOf(a)
  const db = directionOf(b)
  // Picked the other way round, a line is the same line.
  const sense = da.ux * db.ux + da.uy * db.uy < 0 ? -1 : 1
  const between = Math.atan2(sense * (da.ux * db.uy - da.uy * db.ux), sense * (da.ux * db.ux + da.uy * db.uy))
  if (Math.abs(between) > PARALLEL_WITHIN) {
    const degrees = ((Math.abs(between) * 180) / Math.PI).toFixed(1)
    throw new GeometryError(
      `Lines ${a.mark} and ${b.mark} are ${degrees}° from parallel, so they have no one spacing; measure from a line to a point.`,
    )
  }
  const c = Math.cos(between / 2)
  const s = Math.sin(between / 2)
  const mean = across(da.ux * c - da.uy * s, da.uy * c + da.ux * s, middle(a), middle(b))
  const turn = (-mean.sign * mean.along) / 2
  return {
    value: mean.value,
    gradient: [
      ...endMoves(mean.normal, turning(da), -mean.sign / 2, turn),
      ...endMoves(mean.normal, turning(db), mean.sign / 2, turn),
    ],
  }
}

/** Gradient over a line's two ends: `shift` of its middle along the normal and `turn` of its direction. */
const endMoves = (normal: Point, turning: number[], shift: number, turn: number): number[] =>
  turning.map((t, i) => shift * (normal[i % 2] as number) + turn * t)

/** Offset of one point from another across a direction, and how far along it they are apart. */
function across(ux: number, uy: number, from: Point, to: Point) {
  const dx = to[0] - from[0]
  const dy = to[1] - from[1]
  const offset = ux * dy - uy * dx
  if (offset === 0) throw new GeometryError('The two marks lie on one line, so there is no spacing.')
  const normal: Point = [-uy, ux]
  return { value: Math.abs(offset), sign: Math.sign(offset), along: ux * dx + uy * dy, normal }
}

interface TrueCircle {
  centre: Point
  radius: number
  sensitivity: CircleFit['sensitivity']
}

function circleOf(shape: Shape | undefined): TrueCircle {
  if (shape === undefined) throw new GeometryError('A circle is missing from the measure.')
  return fitCircle(shape.points)
}

export const radius: TrueMeasure = ([a]) => {
  const circle = circleOf(a)
  return { value: circle.radius, gradient: circle.sensitivity[2] }
}

export const diameter: TrueMeasure = ([a]) => {
  const circle = circleOf(a)
  return { value: 2 * circle.radius, gradient: circle.sensitivity[2].map((g) => 2 * g) }
}

export const centres: TrueMeasure = ([a, b]) => {
  const [p, q] = [circleOf(a), circleOf(b)]
  const { value, gradient } = between(p.centre, q.centre)
  const [px, py, qx, qy] = gradient as [number, number, number, number]
  return {
    value,
    gradient: [
      ...p.sensitivity[0].map((g, i) => px * g + py * (p.sensitivity[1][i] as number)),
      ...q.sensitivity[0].map((g, i) => qx * g + qy * (q.sensitivity[1][i] as number)),
    ],
  }
}

/** Angle between the directions in which two lines were picked, 0..π. */
export const angle: TrueMeasure = ([a, b]) => {
  if (a === undefined || b === undefined) throw new GeometryError('An angle needs two lines.')
  const [da, db] = [directionOf(a), directionOf(b)]
  const turned = Math.atan2(da.ux * db.uy - da.uy * db.ux, da.ux * db.ux + da.uy * db.uy)
  const sign = turned < 0 ? -1 : 1
  return {
    value: Math.abs(turned),
    gradient: [...turning(da).map((t) => -sign * t), ...turning(db).map((t) => sign * t)],
  }
}

export const run: TrueMeasure = ([path]) => {
  if (path === undefined) throw new GeometryError('A run needs a path.')
  const measured = pathLength(path.points, path.closed)
  if (measured.value === 0) throw new GeometryError('All points of the path are one and the same.')
  return measured
}

export const area: TrueMeasure = ([path]) => {
  if (path === undefined) throw new GeometryError('An area needs a closed path.')
  if (crossesItself(path.points)) {
    throw new GeometryError(`Path ${path.mark} crosses itself, so the area inside it is not determined.`)
  }
  const { value, gradient } = polygonArea(path.points)
  return value < 0 ? { value: -value, gradient: gradient.map((g) => -g) } : { value, gradient }
}

export const MEASURES: Record<Measure, TrueMeasure> = {
  distance,
  spacing,
  diameter,
  radius,
  centres,
  angle,
  run,
  area,
}
