import { usesOf } from '../../formula/evaluation-order.ts'
import type { Conventions } from '../../job/model/conventions.ts'
import type { Dimension } from '../../job/model/types.ts'
import type { AnyReason } from '../../words/reason.ts'
import { type Figures, readFigures } from '../evidence/figures.ts'
import { readingCautions } from '../evidence/reading-cautions.ts'
import { onceFor } from '../kept/once-for.ts'

/** What is read of one dimension alone, once for each, and handed on from one assessment to the next. */
export interface Singles {
  readonly conventions: Conventions
  figuresOf(dimension: Dimension): Figures
  /** Of its readings on the original. */
  cautionsOf(dimension: Dimension): readonly AnyReason[]
  /** The names in its formulas that count. */
  usesOf(dimension: Dimension): readonly string[]
}

export function singles({ unit, gauge, tolerance }: Conventions): Singles {
  const conventions: Conventions = {
    unit,
    ...(gauge === undefined ? {} : { gauge }),
    ...(tolerance === undefined ? {} : { tolerance }),
  }
  return {
    conventions,
    figuresOf: onceFor((dimension) => readFigures(dimension, conventions)),
    cautionsOf: onceFor((dimension) => readingCautions(dimension, conventions)),
    usesOf: onceFor(usesOf),
  }
}
