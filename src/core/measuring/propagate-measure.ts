import { type Pixel, pixel, type True, truePoint } from '../geometry/frames.ts'
import type { Mapped } from '../mapping/mapping.ts'
import type { ViewMapping } from '../mapping/view-mapping.ts'
import type { Draw } from '../uncertainty/draws.ts'
import type { Source } from '../uncertainty/source.ts'
import { addTo } from '../vectors/add-to.ts'
import { element } from '../vectors/element.ts'
import { draughtingMoves } from './draughting-displacements.ts'
import type { Feature } from './features/feature-of-mark.ts'
import type { TrueFeature, TrueMeasure } from './measures/true-measure.ts'

/** A measure taken through a mapping, with everything that moves it. */
export interface Observation {
  value: number
  /** Derivative by each parameter of the mapping. */
  byParameter: number[]
  /** Sources of picking and draughting and what each contributes, mm (or mm², rad). */
  sources: Source[]
  contributions: number[]
}

/**
 * Takes a measure of features through a mapping with parameters theta.
 * @param draw when given, every pick and every drawn feature is first displaced by its realisation
 * @throws GeometryError where there is nothing to measure
 */
export function observe(
  view: ViewMapping,
  theta: readonly number[],
  features: readonly Feature[],
  measure: TrueMeasure,
  draw?: Draw,
): Observation {
  const mapped: Mapped[][] = []
  const shapes: TrueFeature[] = features.map((feature) => {
    const pixels = draw ? displacedPicks(feature, draw) : feature.points
    const images = pixels.map((p) => view.mapping.apply(theta, p, view.frame))
    mapped.push(images)
    const points = images.map((m) => m.point)
    return {
      mark: feature.mark,
      kind: feature.kind,
      closed: feature.closed,
      points: draw ? displacedDrawing(feature, view, theta, points, draw) : points,
    }
  })
  const measured = measure(shapes)
  const byParameter = view.mapping.parameters.map(() => 0)
  const sources: Source[] = []
  const contributions: number[] = []
  let from = 0
  features.forEach((feature, f) => {
    const images = element(mapped, f)
    const gradient = measured.gradient.slice(from, from + 2 * images.length)
    from += 2 * images.length
    addByParameter(byParameter, images, gradient)
    addPicking(feature, images, gradient, sources, contributions)
    addDraughting(feature, view, theta, element(shapes, f), gradient, sources, contributions)
  })
  return { value: measured.value, byParameter, sources, contributions }
}

function addByParameter(sum: number[], images: readonly Mapped[], gradient: readonly number[]): void {
  images.forEach(({ byParameter }, i) => {
    const gx = element(gradient, 2 * i)
    const gy = element(gradient, 2 * i + 1)
    for (let k = 0; k < sum.length; k++) {
      sum[k] = element(sum, k) + gx * element(byParameter, 2 * k) + gy * element(byParameter, 2 * k + 1)
    }
  })
}

function addPicking(
  feature: Feature,
  images: readonly Mapped[],
  gradient: readonly number[],
  sources: Source[],
  contributions: number[],
): void {
  for (const { source, point, dx, dy } of feature.picking) {
    const { byPixel } = element(images, point)
    const gx = element(gradient, 2 * point)
    const gy = element(gradient, 2 * point + 1)
    const c = gx * (byPixel[0] * dx + byPixel[1] * dy) + gy * (byPixel[2] * dx + byPixel[3] * dy)
    const last = sources.length - 1
    if (sources[last] === source) addTo(contributions, last, c)
    else {
      sources.push(source)
      contributions.push(c)
    }
  }
}

function addDraughting(
  feature: Feature,
  view: ViewMapping,
  theta: readonly number[],
  shape: TrueFeature,
  gradient: readonly number[],
  sources: Source[],
  contributions: number[],
): void {
  if (view.draughting === 0) return
  const pointwise = feature.kind === 'point' || feature.kind === 'path'
  const moves = pointwise ? [] : draughtingMoves(feature, view, theta, shape.points)
  feature.draughting.forEach((source, k) => {
    let c = 0
    if (pointwise) c = element(gradient, k)
    else
      moves[k]?.forEach((move, i) => {
        c += move * element(gradient, i)
      })
    sources.push(source)
    contributions.push(view.draughting * c)
  })
}

function displacedPicks(feature: Feature, draw: Draw): Pixel[] {
  const points = feature.points.map(([x, y]): [number, number] => [x, y])
  for (const { source, point, dx, dy } of feature.picking) {
    const p = points[point] as [number, number]
    const e = draw(source)
    p[0] += e * dx
    p[1] += e * dy
  }
  return points.map(([x, y]) => pixel(x, y))
}

function displacedDrawing(
  feature: Feature,
  view: ViewMapping,
  theta: readonly number[],
  points: True[],
  draw: Draw,
): True[] {
  if (view.draughting === 0) return points
  const out = points.map(([x, y]): [number, number] => [x, y])
  draughtingMoves(feature, view, theta, points).forEach((move, k) => {
    const e = view.draughting * draw(element(feature.draughting, k))
    out.forEach((p, i) => {
      p[0] += e * element(move, 2 * i)
      p[1] += e * element(move, 2 * i + 1)
    })
  })
  return out.map(([x, y]) => truePoint(x, y))
}
