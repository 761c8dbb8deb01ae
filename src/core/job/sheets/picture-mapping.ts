import { type Pixel, pixel } from '../../geometry/frames.ts'
import { type LeastSquares, leastSquares, type Row } from '../../linear-algebra/linear-least-squares.ts'
import { reason } from '../../words/core-words.ts'
import { JobError } from '../text/job-error.ts'

/** One place that was picked on two pictures of the same sheet. */
export interface CommonPoint {
  before: Pixel
  after: Pixel
  /** Standard uncertainty of each coordinate of the two picks, pixels of their own pictures. */
  sigmaBefore: number
  sigmaAfter: number
}

/** `uniform`: turned, and larger or smaller the same both ways. `affine`: by its own share each way, and out of square as well. */
export type PictureMappingKind = 'uniform' | 'affine'

/** Where places of one picture of a sheet are on another. */
export interface PictureMapping {
  kind: PictureMappingKind
  apply(at: Pixel): Pixel
  /** Pixels of the other picture for one of this, along the way in which that is most. */
  scale: number
  /** Standard uncertainty of each coordinate of a place that is mapped, pixels of the other picture. */
  uAt(at: Pixel): number
  /** How far each common point lies on the other picture from where it is mapped to: x and y, pixels. */
  residuals: readonly (readonly [x: number, y: number])[]
  /** Standard uncertainty of a coordinate of a common point that the mapping rests on, pixels. */
  s: number
  /** Readings more than the mapping takes. */
  dof: number
}

/** Fewer give no mapping that anything checks. */
export const FEWEST_COMMON = 3

/**
 * The mapping between two pictures of a sheet by places that are common to both, by least squares.
 * Its scatter is what the residuals say; where they say less than the picks themselves, or nothing, what those say
 * counts: three points agree with an affine mapping whatever they are.
 * The covariance of the fitted parameters is JCGM 102:2011, 6.2 with a scatter in common.
 * @throws JobError when there are fewer than three places, or they lie on one line
 */
export function fitPictures(points: readonly CommonPoint[], kind: PictureMappingKind): PictureMapping {
  if (points.length < FEWEST_COMMON) {
    throw new JobError(reason('sheet.too-few-common', { given: points.length, fewest: FEWEST_COMMON }))
  }
  const centre = meanOf(points.map(({ before }) => before))
  const spread = Math.max(...points.map(({ before: [x, y] }) => Math.hypot(x - centre[0], y - centre[1])))
  const local = ([x, y]: Pixel): readonly [number, number] => [
    (x - centre[0]) / spread,
    (y - centre[1]) / spread,
  ]
  if (spread === 0 || isOnOneLine(points.map(({ before }) => local(before)))) {
    throw new JobError(reason('sheet.common-on-a-line'))
  }
  const model = MODELS[kind]
  const rows = points.flatMap(({ before, after }): Row[] => {
    const [x, y] = model.terms(local(before))
    return [
      [after[0], x],
      [after[1], y],
    ]
  })
  const fit = leastSquares(rows, model.size)
  if (fit === null) throw new JobError(reason('sheet.common-on-a-line'))
  const place = (at: Pixel): [number, number] => {
    const [x, y] = model.terms(local(at))
    return [product(x, fit.solution), product(y, fit.solution)]
  }
  const scale = model.scale(fit.solution) / spread
  const dof = rows.length - model.size
  const ofPicks = Math.max(
    ...points.map(({ sigmaBefore, sigmaAfter }) => Math.hypot(sigmaBefore * scale, sigmaAfter)),
  )
  const s = Math.max(ofPicks, dof === 0 ? 0 : Math.sqrt(fit.squares / dof))
  return {
    kind,
    apply: (at) => pixel(...place(at)),
    scale,
    uAt: (at) => s * Math.sqrt(Math.max(...model.terms(local(at)).map((terms) => spreadOf(terms, fit)))),
    residuals: points.map(({ before, after }) => {
      const [x, y] = place(before)
      return [after[0] - x, after[1] - y] as const
    }),
    s,
    dof,
  }
}

interface Model {
  size: number
  /** What each coordinate is of the parameters. */
  terms(at: readonly [number, number]): readonly [readonly number[], readonly number[]]
  /** The most that a length grows by. */
  scale(parameters: readonly number[]): number
}

const MODELS: Readonly<Record<PictureMappingKind, Model>> = {
  uniform: {
    size: 4,
    terms: ([x, y]) => [
      [x, -y, 1, 0],
      [y, x, 0, 1],
    ],
    scale: ([a = 0, b = 0]) => Math.hypot(a, b),
  },
  affine: {
    size: 6,
    terms: ([x, y]) => [
      [x, y, 1, 0, 0, 0],
      [0, 0, 0, x, y, 1],
    ],
    // The larger singular value of [[a, b], [c, d]].
    scale: ([a = 0, b = 0, _e, c = 0, d = 0]) => (Math.hypot(a + d, c - b) + Math.hypot(a - d, b + c)) / 2,
  },
}

function meanOf(points: readonly Pixel[]): readonly [number, number] {
  const sum = (axis: 0 | 1): number => points.reduce((all, point) => all + point[axis], 0)
  return [sum(0) / points.length, sum(1) / points.length]
}

/** How thin a set of places may be across, of how long it is. Common practice, no source. */
const THIN = 0.02

function isOnOneLine(places: readonly (readonly [number, number])[]): boolean {
  let [xx, xy, yy] = [0, 0, 0]
  for (const [x, y] of places) {
    xx += x * x
    xy += x * y
    yy += y * y
  }
  const [half, across] = [(xx + yy) / 2, Math.hypot((xx - yy) / 2, xy)]
  return half - across <= THIN * THIN * (half + across)
}

const product = (terms: readonly number[], parameters: readonly number[]): number =>
  terms.reduce((sum, term, i) => sum + term * (parameters[i] ?? 0), 0)

/** tᵀ (AᵀA)⁻¹ t. */
function spreadOf(terms: readonly number[], { inverse }: LeastSquares): number {
  const n = terms.length
  return terms.reduce(
    (sum, one, i) => sum + terms.reduce((row, other, j) => row + one * other * (inverse[i * n + j] ?? 0), 0),
    0,
  )
}
