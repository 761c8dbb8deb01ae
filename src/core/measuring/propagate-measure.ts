import { type Pixel, pixel, type True, truePoint } from '../geometry/frames.ts'
import { addScaled, addTo } from '../linear-algebra/add-to.ts'
import { dot } from '../linear-algebra/dot.ts'
import { element } from '../linear-algebra/element.ts'
import type { Mapped } from '../mapping/mapping.ts'
import type { ViewMapping } from '../mapping/view-mapping.ts'
import type { Draw } from '../uncertainty/draws.ts'
import type { Source } from '../uncertainty/source.ts'
import { draughtingDisplacements } from './draughting-displacements.ts'
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

/** A feature in true size, and how each of its points came there. */
interface MappedFeature {
  images: readonly Mapped[]
  inTrue: TrueFeature
}

/** @param draw when given, every pick and every drawn feature is first displaced by its realisation */
function mapFeature(
  view: ViewMapping,
  theta: readonly number[],
  feature: Feature,
  draw: Draw | undefined,
): MappedFeature {
  const pixels = draw ? displacedPicks(feature, draw) : feature.points
  const images = pixels.map((p) => view.mapping.apply(theta, p, view.frame))
  const points = images.map((m) => m.point)
  return {
    images,
    inTrue: {
      mark: feature.mark,
      kind: feature.kind,
      closed: feature.closed,
      points: draw ? displacedDrawing(feature, view, theta, points, draw) : points,
    },
  }
}

/**
 * Takes a measure of features through a mapping with parameters theta, for its value alone.
 * @param draw when given, every pick and every drawn feature is first displaced by its realisation
 * @throws GeometryError where there is nothing to measure
 */
export function measureThrough(
  view: ViewMapping,
  theta: readonly number[],
  features: readonly Feature[],
  measure: TrueMeasure,
  draw?: Draw,
): number {
  return measure(features.map((feature) => mapFeature(view, theta, feature, draw).inTrue)).value
}

/** The same with everything that moves it. */
export function observe(
  view: ViewMapping,
  theta: readonly number[],
  features: readonly Feature[],
  measure: TrueMeasure,
  draw?: Draw,
): Observation {
  const mapped = features.map((feature) => mapFeature(view, theta, feature, draw))
  const measured = measure(mapped.map(({ inTrue }) => inTrue))
  const byParameter = view.mapping.parameters.map(() => 0)
  const sources: Source[] = []
  const contributions: number[] = []
  let from = 0
  features.forEach((feature, f) => {
    const { images, inTrue } = element(mapped, f)
    const gradient = measured.gradient.slice(from, from + 2 * images.length)
    from += 2 * images.length
    addByParameter(byParameter, images, gradient)
    addPicking(feature, images, gradient, sources, contributions)
    addDraughting(feature, view, theta, inTrue, gradient, sources, contributions)
  })
  return { value: measured.value, byParameter, sources, contributions }
}

/** The innermost loops of Monte Carlo: elements are read in place, for a shared helper would be slower. */
function addByParameter(sum: number[], images: readonly Mapped[], gradient: readonly number[]): void {
  images.forEach(({ byParameter }, i) => {
    const gx = gradient[2 * i] ?? Number.NaN
    const gy = gradient[2 * i + 1] ?? Number.NaN
    for (let k = 0; k < sum.length; k++) {
      sum[k] =
        (sum[k] ?? Number.NaN) +
        gx * (byParameter[2 * k] ?? Number.NaN) +
        gy * (byParameter[2 * k + 1] ?? Number.NaN)
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
    const gx = gradient[2 * point] ?? Number.NaN
    const gy = gradient[2 * point + 1] ?? Number.NaN
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
  const pointwise = isPointwise(feature)
  const moves = pointwise ? [] : draughtingDisplacements(feature, view, theta, shape.points)
  feature.draughting.forEach((source, k) => {
    const c = pointwise ? (gradient[k] ?? Number.NaN) : dot(moves[k] ?? [], gradient)
    sources.push(source)
    contributions.push(view.draughting * c)
  })
}

/** Whether each coordinate of each point is drawn with an error of its own. */
const isPointwise = ({ kind }: Feature): boolean => kind === 'point' || kind === 'path'

function displacedPicks(feature: Feature, draw: Draw): Pixel[] {
  const points = feature.points.map(([x, y]): [number, number] => [x, y])
  for (const { source, point, dx, dy } of feature.picking) {
    const p = element(points, point)
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
  const errors = feature.draughting.map((source) => view.draughting * draw(source))
  if (isPointwise(feature)) {
    return points.map(([x, y], i) =>
      truePoint(x + (errors[2 * i] ?? Number.NaN), y + (errors[2 * i + 1] ?? Number.NaN)),
    )
  }
  const out = points.flat()
  draughtingDisplacements(feature, view, theta, points).forEach((move, k) => {
    addScaled(out, errors[k] ?? Number.NaN, move)
  })
  return points.map((_, i) => truePoint(out[2 * i] ?? Number.NaN, out[2 * i + 1] ?? Number.NaN))
}
