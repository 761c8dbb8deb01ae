import { degrees, radians, toDegrees, toRadians } from '../../geometry/angle-units.ts'
import { type True, type Vector, vectorLike } from '../../geometry/frames.ts'
import { GeometryError } from '../../geometry/geometry-error.ts'
import type { Measured } from '../../geometry/polygon.ts'
import { reason } from '../../words/core-words.ts'
import { directionOf, middle, turning } from './direction.ts'
import { pointAt, type TrueFeature, type TrueMeasure } from './true-measure.ts'

/** Lines further from parallel than this have no one spacing. */
const PARALLEL_WITHIN = toRadians(degrees(5))

/** Perpendicular distance between two lines' middles, across their mean direction; or of a point from a line. */
export const spacing: TrueMeasure = (shapes) => {
  const [a, b] = shapes
  if (a === undefined || b === undefined) throw new GeometryError(reason('measure.spacing-of-two-marks'))
  if (a.kind !== 'point') return b.kind === 'point' ? pointFromLine(a, pointAt(b, 0)) : lineFromLine(a, b)
  const { value, gradient } = pointFromLine(b, pointAt(a, 0))
  return { value, gradient: [...gradient.slice(4), ...gradient.slice(0, 4)] }
}

function pointFromLine(line: TrueFeature, point: True): Measured {
  const d = directionOf(line)
  const { value, sign, along, normal } = across(d.ux, d.uy, middle(line), point)
  return {
    value,
    gradient: [...endMoves(normal, turning(d), -sign / 2, -sign * along), sign * normal[0], sign * normal[1]],
  }
}

function lineFromLine(a: TrueFeature, b: TrueFeature): Measured {
  const da = directionOf(a)
  const db = directionOf(b)
  // Picked the other way round, a line is the same line.
  const sense = da.ux * db.ux + da.uy * db.uy < 0 ? -1 : 1
  const between = Math.atan2(sense * (da.ux * db.uy - da.uy * db.ux), sense * (da.ux * db.ux + da.uy * db.uy))
  if (Math.abs(between) > PARALLEL_WITHIN) {
    const apart = toDegrees(radians(Math.abs(between)))
    throw new GeometryError(reason('measure.lines-not-parallel', { marks: [a.mark, b.mark], degrees: apart }))
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
const endMoves = (normal: Vector<True>, turning: number[], shift: number, turn: number): number[] =>
  turning.map((t, i) => shift * (i % 2 === 0 ? normal[0] : normal[1]) + turn * t)

/** Offset of one point from another across a direction, and how far along it they are apart. */
function across(ux: number, uy: number, from: True, to: True) {
  const dx = to[0] - from[0]
  const dy = to[1] - from[1]
  const offset = ux * dy - uy * dx
  if (offset === 0) throw new GeometryError(reason('measure.marks-on-one-line'))
  const normal = vectorLike(from, -uy, ux)
  return { value: Math.abs(offset), sign: Math.sign(offset), along: ux * dx + uy * dy, normal }
}
