import { type Pixel, pixel } from '../../geometry/frames.ts'
import { type LeastSquares, leastSquares, type Row } from '../../linear-algebra/linear-least-squares.ts'
import { reason } from '../../words/core-words.ts'
import { JobError } from '../text/job-error.ts'
import {
  type LocalPlace,
  PICTURE_MODELS,
  type PictureMappingKind,
  type PictureModel,
} from './picture-models.ts'

/** One place that was picked on two pictures of the same sheet. */
export interface CommonPoint {
  before: Pixel
  after: Pixel
  /** Standard uncertainty of each coordinate of the two picks, pixels of their own pictures. */
  sigmaBefore: number
  sigmaAfter: number
}

/** Where places of one picture of a sheet are on another. */
export interface PictureMapping {
  kind: PictureMappingKind
  apply(at: Pixel): Pixel
  /** Pixels of the other picture for one of this at a place, along the way in which that is most. */
  scaleAt(at: Pixel): number
  /** Standard uncertainty of each coordinate of a place that is mapped, pixels of the other picture. */
  uAt(at: Pixel): number
  /** How far each common point lies on the other picture from where it is mapped to: x and y, pixels. */
  residuals: readonly (readonly [x: number, y: number])[]
  /** Standard uncertainty of a coordinate of a common point that the mapping rests on, pixels. */
  s: number
  /** Readings more than the mapping takes. */
  dof: number
}

/** Fewer give no mapping. */
export const FEWEST_COMMON: Readonly<Record<PictureMappingKind, number>> = {
  uniform: 3,
  affine: 3,
  projective: 4,
}

/** Steps of the fit; a sheet that was photographed takes some five. */
const MOST_STEPS = 50

/** Of the spread of the places, beyond which nothing is seen. */
const STILL = 1e-13

/**
 * The mapping between two pictures of a sheet by places that are common to both, by least squares (Gauss and Newton).
 * Its scatter is what the residuals say; where they say less than the picks themselves, or nothing, what those say
 * counts: three points agree with an affine mapping whatever they are.
 * The covariance of the fitted parameters is JCGM 102:2011, 6.2 with a scatter in common.
 * @throws JobError when there are too few places, or they do not determine it
 */
export function fitPictures(points: readonly CommonPoint[], kind: PictureMappingKind): PictureMapping {
  const fewest = FEWEST_COMMON[kind]
  if (points.length < fewest) {
    throw new JobError(reason('sheet.too-few-common', { given: points.length, fewest }))
  }
  const [from, to] = [frameOf(points.map(({ before }) => before)), frameOf(points.map(({ after }) => after))]
  const places = points.map(({ before, after }) => ({ at: from.local(before), seen: to.local(after) }))
  if (from.spread === 0 || to.spread === 0 || isOnOneLine(places.map(({ at }) => at))) {
    throw new JobError(reason('sheet.common-on-a-line'))
  }
  const model = PICTURE_MODELS[kind]
  const { parameters, fit } = fitted(model, places)
  const valueAt = (at: Pixel): LocalPlace => model.value(parameters, from.local(at))
  const apply = (at: Pixel): Pixel => pixel(...to.back(valueAt(at)))
  const scaleAt = (at: Pixel): number => largestGrowth(apply, at)
  const dof = 2 * points.length - model.size
  const ofPicks = Math.max(
    ...points.map(({ before, sigmaBefore, sigmaAfter }) =>
      Math.hypot(sigmaBefore * scaleAt(before), sigmaAfter),
    ),
  )
  const s = Math.max(ofPicks, dof === 0 ? 0 : to.spread * Math.sqrt(fit.squares / dof))
  return {
    kind,
    apply,
    scaleAt,
    uAt: (at) =>
      s *
      Math.sqrt(Math.max(...model.terms(parameters, from.local(at)).map((terms) => spreadOf(terms, fit)))),
    residuals: points.map(({ before, after }) => {
      const [x, y] = apply(before)
      return [after[0] - x, after[1] - y] as const
    }),
    s,
    dof,
  }
}

interface Seen {
  at: LocalPlace
  seen: LocalPlace
}

/** @throws JobError when the places do not determine the parameters */
function fitted(model: PictureModel, places: readonly Seen[]): { parameters: number[]; fit: LeastSquares } {
  let parameters = [...model.start]
  for (let step = 0; ; step++) {
    const rows = places.flatMap(({ at, seen }): Row[] => {
      const value = model.value(parameters, at)
      const [x, y] = model.terms(parameters, at)
      return [
        [seen[0] - value[0], x],
        [seen[1] - value[1], y],
      ]
    })
    const fit = leastSquares(rows, model.size)
    if (fit === null || step > MOST_STEPS) throw new JobError(reason('sheet.common-on-a-line'))
    if (Math.max(...fit.solution.map(Math.abs)) < STILL) return { parameters, fit }
    const next = parameters.map((one, i) => one + (fit.solution[i] ?? 0))
    // What is left of rounding goes to and fro.
    if (
      step > 2 &&
      next.every((one, i) => Math.abs(one - (parameters[i] ?? 0)) <= 1e-12 * Math.max(1, Math.abs(one)))
    )
      return { parameters: next, fit }
    parameters = next
  }
}

/** Places counted from their middle, in units of how far they reach. */
function frameOf(points: readonly Pixel[]) {
  const mean = (axis: 0 | 1): number => points.reduce((all, one) => all + one[axis], 0) / points.length
  const [x, y] = [mean(0), mean(1)]
  const spread = Math.max(...points.map((one) => Math.hypot(one[0] - x, one[1] - y)))
  return {
    spread,
    local: (at: Pixel): LocalPlace => [(at[0] - x) / spread, (at[1] - y) / spread],
    back: ([u, v]: LocalPlace): [number, number] => [x + spread * u, y + spread * v],
  }
}

/** Half a pixel to either side: a mapping is as good as straight over that. */
const REACH = 0.5

/** The larger singular value of the derivative of a mapping. */
function largestGrowth(apply: (at: Pixel) => Pixel, [x, y]: Pixel): number {
  const [left, right] = [apply(pixel(x - REACH, y)), apply(pixel(x + REACH, y))]
  const [up, down] = [apply(pixel(x, y - REACH)), apply(pixel(x, y + REACH))]
  const [a, c] = [right[0] - left[0], right[1] - left[1]]
  const [b, d] = [down[0] - up[0], down[1] - up[1]]
  return (Math.hypot(a + d, c - b) + Math.hypot(a - d, b + c)) / 2
}

/** How thin a set of places may be across, of how long it is. Common practice, no source. */
const THIN = 0.02

function isOnOneLine(places: readonly LocalPlace[]): boolean {
  let [xx, xy, yy] = [0, 0, 0]
  for (const [x, y] of places) {
    xx += x * x
    xy += x * y
    yy += y * y
  }
  const [half, across] = [(xx + yy) / 2, Math.hypot((xx - yy) / 2, xy)]
  return half - across <= THIN * THIN * (half + across)
}

/** tᵀ (AᵀA)⁻¹ t. */
function spreadOf(terms: readonly number[], { inverse }: LeastSquares): number {
  const n = terms.length
  return terms.reduce(
    (sum, one, i) => sum + terms.reduce((row, other, j) => row + one * other * (inverse[i * n + j] ?? 0), 0),
    0,
  )
}
