import { usesOf } from '../../formula/evaluation-order.ts'
import type { Conventions } from '../../job/model/conventions.ts'
import type { Dimension } from '../../job/model/types.ts'
import type { AnyReason } from '../../words/reason.ts'
import { figureQuestions } from '../evidence/figure-remarks.ts'
import { type Figures, readFigures } from '../evidence/figures.ts'
import { type FoundSpread, foundSpreads } from '../evidence/found-spread.ts'
import { readingCautions } from '../evidence/reading-cautions.ts'

/** What is read of one dimension alone. */
export interface Single {
  figures: Figures
  /** Of its readings on the original, and questions about its figures. */
  cautions: readonly AnyReason[]
  /** How its readings on the original scatter. */
  spreads: readonly FoundSpread[]
  /** The names in its formulas that count. */
  uses: readonly string[]
}

export type Singles = ReadonlyMap<Dimension, Single>

/** @param before of the same conventions: what was read of a dimension that is still the same is taken from it */
export function readSingles(
  dimensions: readonly Dimension[],
  conventions: Conventions,
  before: Singles | undefined,
): Singles {
  const singles = new Map<Dimension, Single>()
  for (const dimension of dimensions) {
    singles.set(dimension, before?.get(dimension) ?? readSingle(dimension, conventions))
  }
  return singles
}

/** @throws RangeError for a dimension that is not among them */
export function singleOf(singles: Singles, dimension: Dimension): Single {
  const single = singles.get(dimension)
  if (single === undefined) throw new RangeError(`Nothing was read of ${dimension.name}.`)
  return single
}

function readSingle(dimension: Dimension, conventions: Conventions): Single {
  const figures = readFigures(dimension, conventions)
  const cautions = [...readingCautions(dimension, conventions), ...figureQuestions(dimension, figures)]
  const spreads = foundSpreads(dimension, conventions)
  return { figures, cautions, spreads, uses: usesOf(dimension) }
}
