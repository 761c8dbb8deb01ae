/**
 * `uniform`: turned, and larger or smaller the same both ways. `affine`: by its own share each way, and out of square as
 * well. `projective`: seen from aslant, as a photograph is.
 */
export type PictureMappingKind = 'uniform' | 'affine' | 'projective'

/** A place counted from the middle of all places, in units of how far they reach. */
export type LocalPlace = readonly [x: number, y: number]

type Terms = readonly number[]

/** A kind of mapping between two pictures of a sheet, in local places of both. */
export interface PictureModel {
  /** How many parameters it takes. */
  size: number
  start: Terms
  value(parameters: Terms, at: LocalPlace): LocalPlace
  /** Derivatives of x and of y by the parameters. */
  terms(parameters: Terms, at: LocalPlace): readonly [x: Terms, y: Terms]
}

const sum = (terms: Terms, parameters: Terms): number =>
  terms.reduce((all, term, i) => all + term * (parameters[i] ?? 0), 0)

/** A mapping that is linear in its parameters. */
function linear(start: Terms, terms: (at: LocalPlace) => readonly [Terms, Terms]): PictureModel {
  return {
    size: start.length,
    start,
    value: (parameters, at) => {
      const [x, y] = terms(at)
      return [sum(x, parameters), sum(y, parameters)]
    },
    terms: (_, at) => terms(at),
  }
}

export const PICTURE_MODELS: Readonly<Record<PictureMappingKind, PictureModel>> = {
  uniform: linear([1, 0, 0, 0], ([x, y]) => [
    [x, -y, 1, 0],
    [y, x, 0, 1],
  ]),
  affine: linear([1, 0, 0, 0, 1, 0], ([x, y]) => [
    [x, y, 1, 0, 0, 0],
    [0, 0, 0, x, y, 1],
  ]),
  projective: {
    size: 8,
    start: [1, 0, 0, 0, 1, 0, 0, 0],
    value: ([a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0], [x, y]) => {
      const w = g * x + h * y + 1
      return [(a * x + b * y + c) / w, (d * x + e * y + f) / w]
    },
    terms: (parameters, [x, y]) => {
      const [, , , , , , g = 0, h = 0] = parameters
      const w = g * x + h * y + 1
      const [u, v] = PICTURE_MODELS.projective.value(parameters, [x, y])
      return [
        [x / w, y / w, 1 / w, 0, 0, 0, (-u * x) / w, (-u * y) / w],
        [0, 0, 0, x / w, y / w, 1 / w, (-v * x) / w, (-v * y) / w],
      ]
    },
  },
}
