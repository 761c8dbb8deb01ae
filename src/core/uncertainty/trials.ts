import { element } from '../linear-algebra/element.ts'
import { spreadOf, unitDrawn } from './draws.ts'
import { independentMoves } from './independent-moves.ts'
import { type RandomStream, randomStream } from './random.ts'
import type { DistributionShape, Source, VarianceEstimate } from './source.ts'
import { fromTerms, type Uncertain } from './uncertain.ts'

/** From so many degrees of freedom on an estimate of variance is taken as known: k differs by less than 0.6 %. */
const AS_GOOD_AS_KNOWN = 200

/** What sources can be drawn together by: normal ones on one estimate of variance, or on none that is limited. */
const TOGETHER = 'known'
type Group = VarianceEstimate | typeof TOGETHER

const groupOf = ({ shape, estimate }: Source): Group | null =>
  shape === 'rectangular' ? null : estimate.dof > AS_GOOD_AS_KNOWN ? TOGETHER : estimate

/** Something that is drawn, with unit variance as far as it has one, and by how much it moves each number. */
interface Drawn {
  moves: readonly number[]
  shape: DistributionShape
  /** null: the variance is taken as known. */
  estimate: VarianceEstimate | null
}

/**
 * Realises uncertain numbers to first order, all together, one trial after another. Normal sources of one estimate of
 * variance are drawn as no more than there are numbers, which comes to the same distribution; a view can have hundreds.
 * Depends on its seed and on the numbers alone.
 */
export class Trials {
  readonly #random: RandomStream
  readonly #index: ReadonlyMap<Uncertain, number>
  readonly #all: readonly Drawn[]
  /** Of each number, by what is drawn. */
  readonly #coefficients: readonly Float64Array[]
  readonly #drawn: Float64Array
  readonly #spread = new Map<VarianceEstimate, number>()

  /** @param numbers all that will be asked for */
  constructor(seed: number, numbers: Iterable<Uncertain>) {
    const all = [...new Set(numbers)]
    this.#random = randomStream(seed)
    this.#index = new Map(all.map((x, i) => [x, i]))
    this.#all = [...drawnTogether(all), ...drawnAlone(all)]
    this.#coefficients = all.map((_, i) => Float64Array.from(this.#all, ({ moves }) => element(moves, i)))
    this.#drawn = new Float64Array(this.#all.length)
  }

  /** Draws everything anew. */
  next(): void {
    const random = this.#random
    this.#spread.clear()
    for (let i = 0; i < this.#all.length; i++) {
      const { shape, estimate } = element(this.#all, i)
      const unit = unitDrawn(shape, random)
      this.#drawn[i] = estimate === null ? unit : unit * spreadOf(estimate, this.#spread, random)
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

function drawnTogether(all: readonly Uncertain[]): Drawn[] {
  const groups = new Set(all.flatMap(({ sources }) => sources.map(groupOf)))
  return [...groups].flatMap((group) =>
    group === null
      ? []
      : independentMoves(all.map((x) => only(x, (source) => groupOf(source) === group))).map((moves) => ({
          moves,
          shape: 'normal' as const,
          estimate: group === TOGETHER ? null : group,
        })),
  )
}

function drawnAlone(all: readonly Uncertain[]): Drawn[] {
  const alone = new Set(all.flatMap(({ sources }) => sources.filter((source) => groupOf(source) === null)))
  const own = all.map((x) => new Map(x.sources.map((source, s) => [source, element(x.coefficients, s)])))
  return [...alone].map((source) => ({
    moves: own.map((of) => of.get(source) ?? 0),
    shape: source.shape,
    estimate: source.estimate.dof > AS_GOOD_AS_KNOWN ? null : source.estimate,
  }))
}

function only(x: Uncertain, which: (source: Source) => boolean): Uncertain {
  const at = x.sources.flatMap((source, i) => (which(source) ? [i] : []))
  return fromTerms(
    x.value,
    at.map((i) => element(x.sources, i)),
    at.map((i) => element(x.coefficients, i)),
  )
}
