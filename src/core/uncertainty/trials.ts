import { element } from '../linear-algebra/element.ts'
import { spreadOf } from './draws.ts'
import { independentMoves } from './independent-moves.ts'
import { type RandomStream, randomStream } from './random.ts'
import type { Source, VarianceEstimate } from './source.ts'
import { fromTerms, type Uncertain } from './uncertain.ts'

/** From so many degrees of freedom on an estimate of variance is taken as known: k differs by less than 0.6 %. */
const AS_GOOD_AS_KNOWN = 200

/** Sources whose sum is normal whatever their number, so that they can be drawn together. */
const drawnTogether = ({ shape, estimate }: Source): boolean =>
  shape === 'normal' && estimate.dof > AS_GOOD_AS_KNOWN

/**
 * Realises uncertain numbers to first order, all together, one trial after another. Normal sources are drawn as no more than
 * there are numbers, which comes to the same distribution; a view can have hundreds.
 * Depends on its seed and on the numbers alone.
 */
export class Trials {
  readonly #random: RandomStream
  readonly #index: ReadonlyMap<Uncertain, number>
  readonly #moves: number
  /** Sources that are drawn each by itself. */
  readonly #alone: readonly Source[]
  /** Of each number, by move and then by source alone. */
  readonly #coefficients: readonly Float64Array[]
  readonly #drawn: Float64Array
  readonly #spread = new Map<VarianceEstimate, number>()

  /** @param numbers all that will be asked for */
  constructor(seed: number, numbers: Iterable<Uncertain>) {
    const all = [...new Set(numbers)]
    this.#random = randomStream(seed)
    this.#index = new Map(all.map((x, i) => [x, i]))
    const moves = independentMoves(all.map((x) => only(x, drawnTogether)))
    const alone = new Set(all.flatMap((x) => x.sources.filter((source) => !drawnTogether(source))))
    this.#moves = moves.length
    this.#alone = [...alone]
    this.#coefficients = all.map((x, i) => {
      const own = new Map(x.sources.map((source, s) => [source, element(x.coefficients, s)]))
      return Float64Array.from([
        ...moves.map((move) => element(move, i)),
        ...this.#alone.map((source) => own.get(source) ?? 0),
      ])
    })
    this.#drawn = new Float64Array(this.#moves + this.#alone.length)
  }

  /** Draws everything anew. */
  next(): void {
    const random = this.#random
    this.#spread.clear()
    for (let i = 0; i < this.#moves; i++) this.#drawn[i] = random.normal()
    for (let s = 0; s < this.#alone.length; s++) {
      const { shape, estimate } = element(this.#alone, s)
      const unit = shape === 'rectangular' ? Math.sqrt(3) * (2 * random.uniform() - 1) : random.normal()
      const factor = estimate.dof > AS_GOOD_AS_KNOWN ? 1 : spreadOf(estimate, this.#spread, random)
      this.#drawn[this.#moves + s] = unit * factor
    }
  }

  /** @throws RangeError for a number that was not named in the beginning */
  of(x: Uncertain): number {
    const index = this.#index.get(x)
    if (index === undefined) throw new RangeError('Asked for a number that is not among those drawn.')
    const coefficients = element(this.#coefficients, index)
    let { value } = x
    for (let i = 0; i < coefficients.length; i++) {
      value += (coefficients[i] ?? Number.NaN) * (this.#drawn[i] ?? Number.NaN)
    }
    return value
  }
}

function only(x: Uncertain, which: (source: Source) => boolean): Uncertain {
  const at = x.sources.flatMap((source, i) => (which(source) ? [i] : []))
  return fromTerms(
    x.value,
    at.map((i) => element(x.sources, i)),
    at.map((i) => element(x.coefficients, i)),
  )
}
