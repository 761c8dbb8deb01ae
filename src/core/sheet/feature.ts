import { algebraicCircle } from '../geometry/algebraic-circle.ts'
import { fitLine } from '../geometry/fit-line.ts'
import type { Point } from '../geometry/frames.ts'
import { GeometryError } from '../geometry/geometry-error.ts'
import type { Mark, MarkKind } from '../job/types.ts'
import { newSource, type Source, type VarianceEstimate } from '../uncertainty/source.ts'
import { repeatedObservations } from '../uncertainty/type-a.ts'

/** How one source of picking error moves one of a feature's points, in pixels per unit of the source. */
export interface Move {
  source: Source
  point: number
  dx: number
  dy: number
}

/** A mark ready to be measured: the points that define it and what makes them uncertain. */
export interface Feature {
  mark: string
  kind: MarkKind
  /** point: one; line: its two ends; circle and path: every picked point. Pixels. */
  points: readonly Point[]
  closed: boolean
  /** circle: where its centre appears, pixels. */
  centre?: Point
  /** Sorted so that moves of one source stand together. */
  picking: readonly Move[]
  /** point: x and y; line: each end across the line; circle: centre x, y and radius; path: x and y of each point. */
  draughting: readonly Source[]
  /** How the picks of a line of more than two, or of a repeated point, lie about it. Pixels. */
  scatter?: { squares: number; dof: number; sigma: number }
}

/**
 * Turns a mark into a feature.
 * @throws GeometryError naming the mark when its picks do not determine it
 */
export function featureOf(mark: Mark): Feature {
  try {
    switch (mark.kind) {
      case 'point':
        return pointFeature(mark)
      case 'line':
        return lineFeature(mark)
      case 'circle':
        return circleFeature(mark)
      case 'path':
        return pathFeature(mark)
    }
  } catch (error) {
    if (error instanceof GeometryError) throw new GeometryError(`Mark ${mark.id}: ${error.message}`)
    throw error
  }
}

const pickingOf = (mark: Mark): string => `picking of ${mark.label ?? mark.id}`
function draughtingOf(mark: Mark, n: number): Source[] {
  const label = `draughting of ${mark.label ?? mark.id}`
  const sources: Source[] = []
  for (let i = 0; i < n; i++) sources.push(newSource(label))
  return sources
}

function pointFeature(mark: Mark & { kind: 'point' }): Feature {
  const { pixel, u, estimate, squares } = pickedPixel(mark)
  const label = pickingOf(mark)
  return {
    mark: mark.id,
    kind: 'point',
    points: [pixel],
    closed: false,
    picking: [
      { source: newSource(label, estimate), point: 0, dx: u, dy: 0 },
      { source: newSource(label, estimate), point: 0, dx: 0, dy: u },
    ],
    draughting: draughtingOf(mark, 2),
    ...(estimate && squares ? { scatter: { squares, dof: estimate.dof, sigma: mark.sigma } } : {}),
  }
}

/** Where a point was picked, with the standard uncertainty of each coordinate, pixels. */
interface PickedPixel {
  pixel: Point
  u: number
  estimate?: VarianceEstimate
  /** Sum of squared distances of the picks from their mean, both coordinates. */
  squares?: number
}

function pickedPixel(mark: Mark & { kind: 'point' }): PickedPixel {
  const { pixel, repeats = [], sigma } = mark
  if (repeats.length === 0) return { pixel, u: sigma }
  const picks = [pixel, ...repeats]
  const n = picks.length
  const x = repeatedObservations(picks.map((p) => p[0]))
  const y = repeatedObservations(picks.map((p) => p[1]))
  // Both coordinates are picked alike, so their scatter is one estimate with 2(n − 1) degrees of freedom.
  const s = Math.sqrt((x.s ** 2 + y.s ** 2) / 2)
  const mean: Point = [x.mean, y.mean]
  // Repeats that agree to the last digit tell nothing of the scatter: the stated sigma stands.
  if (s === 0) return { pixel: mean, u: sigma / Math.sqrt(n) }
  const dof = 2 * (n - 1)
  return { pixel: mean, u: s / Math.sqrt(n), estimate: { dof }, squares: s * s * dof }
}

/** A line stays a line under every mapping, so it is fitted in pixels, where all picks are uncertain alike. */
function lineFeature(mark: Mark & { kind: 'line' }): Feature {
  const line = fitLine(mark.pixels)
  const [nx, ny] = [-line.direction[1], line.direction[0]]
  const label = pickingOf(mark)
  const offset = newSource(label)
  const rotation = newSource(label)
  const across = mark.sigma * line.offset
  const turn = mark.sigma * line.rotation
  const [t0, t1] = line.at
  return {
    mark: mark.id,
    kind: 'line',
    points: line.ends,
    closed: false,
    picking: [
      { source: offset, point: 0, dx: across * nx, dy: across * ny },
      { source: offset, point: 1, dx: across * nx, dy: across * ny },
      { source: rotation, point: 0, dx: turn * t0 * nx, dy: turn * t0 * ny },
      { source: rotation, point: 1, dx: turn * t1 * nx, dy: turn * t1 * ny },
    ],
    draughting: draughtingOf(mark, 2),
    ...(line.n > 2 ? { scatter: { squares: line.squares, dof: line.n - 2, sigma: mark.sigma } } : {}),
  }
}

/** A circle of the part is no circle on a shrunk sheet; it is fitted in true size, so every pick is kept. */
function circleFeature(mark: Mark & { kind: 'circle' }): Feature {
  return {
    mark: mark.id,
    kind: 'circle',
    points: mark.pixels,
    closed: true,
    centre: algebraicCircle(mark.pixels).centre,
    picking: everyPoint(mark),
    draughting: draughtingOf(mark, 3),
  }
}

function pathFeature(mark: Mark & { kind: 'path' }): Feature {
  if (mark.pixels.length < (mark.closed ? 3 : 2)) {
    throw new GeometryError(
      mark.closed ? 'A closed path needs three points or more.' : 'A path needs two points or more.',
    )
  }
  return {
    mark: mark.id,
    kind: 'path',
    points: mark.pixels,
    closed: mark.closed ?? false,
    picking: everyPoint(mark),
    draughting: draughtingOf(mark, 2 * mark.pixels.length),
  }
}

function everyPoint(mark: Mark & { pixels: readonly Point[] }): Move[] {
  const label = pickingOf(mark)
  const { sigma } = mark
  const moves: Move[] = []
  for (let point = 0; point < mark.pixels.length; point++) {
    moves.push({ source: newSource(label), point, dx: sigma, dy: 0 })
    moves.push({ source: newSource(label), point, dx: 0, dy: sigma })
  }
  return moves
}
