import { namesInRelation } from '../../formula/relation-text.ts'
import { labelBesideId } from '../../job/ids/label.ts'
import {
  type CarriedCandidate,
  type CarriedFigure,
  carriedFigures,
  isCarried,
} from '../alternatives/carried-figures.ts'
import { type StandingOn, standingOn } from '../alternatives/standing-on.ts'
import type { Assessed } from '../assessment/assessed.ts'
import type { Assessment } from '../assessment/assessment.ts'
import { displayFactor } from '../units/display-units.ts'
import { dimensionRow } from './dimension-row.ts'
import { relationRow } from './relation-rows.ts'
import type { TableCandidate, TableDoubtful } from './table.ts'

/** The figures of a dimension that are hard to read, and all that they were made from. */
export interface KeptDoubtful {
  rows: readonly TableDoubtful[]
  madeFrom: readonly unknown[]
}

/**
 * The figures that are hard to read and what each could be, with what each would do to what stands on it.
 * @param before made before: what is made from the same is taken from it
 */
export function doubtfulRows(
  assessment: Assessment,
  before?: ReadonlyMap<string, KeptDoubtful>,
): Map<string, KeptDoubtful> {
  const all = new Map<string, KeptDoubtful>()
  for (const assessed of assessment.dimensions.values()) {
    const { name, evidence } = assessed.dimension
    if (!evidence.some(isCarried)) continue
    const standing = standingOn(name, assessment)
    const madeFrom = materials(name, standing, assessment)
    const was = before?.get(name)
    all.set(
      name,
      was !== undefined && sameItems(was.madeFrom, madeFrom)
        ? was
        : {
            madeFrom,
            rows: carriedFigures(assessed, assessment).map((one) => doubtfulRow(one, standing, assessment)),
          },
    )
  }
  return all
}

/** All that the rows of a dimension depend on: as long as it is the same, so are they. */
function materials(name: string, { dimensions, relations }: StandingOn, assessment: Assessment): unknown[] {
  const { unit, figuresAs, finest, feetFrom } = assessment
  const inRelations = relations.flatMap(({ text }) => namesInRelation(text))
  const assessed = [name, ...dimensions, ...inRelations].map((one) => assessment.dimensions.get(one))
  return [unit, figuresAs, finest, feetFrom, ...relations, ...assessed]
}

const sameItems = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((item, i) => item === b[i])

function doubtfulRow(figure: CarriedFigure, standing: StandingOn, assessment: Assessment): TableDoubtful {
  const { dimension, evidence, candidates, none, besides, mixture } = figure
  const factor = displayFactor(dimension.kind, assessment.unit)
  const label = labelBesideId(evidence)
  return {
    dimension: dimension.name,
    evidence: evidence.id,
    ...(label === undefined ? {} : { label }),
    besides,
    candidates: candidates.map((one) => candidateRow(one, figure, standing, factor)),
    none,
    mixture: mixture && { value: mixture.value * factor, u: mixture.u * factor },
  }
}

function candidateRow(
  { text, value, given, probability, under }: CarriedCandidate,
  { dimension }: CarriedFigure,
  { dimensions, relations }: StandingOn,
  factor: number,
): TableCandidate {
  if (under === null) {
    const shown = value === null ? null : value * factor
    return { text, value: shown, written: '', given, probability, relations: [], dimensions: [] }
  }
  const rowOf = (name: string) => dimensionRow(under.dimensions.get(name) as Assessed, {}, under, [])
  const own = rowOf(dimension.name)
  return {
    text,
    value: own.value,
    written: own.written,
    given,
    probability,
    relations: relations.map((relation) => relationRow(relation, under)),
    dimensions: dimensions.map((name) => {
      const { value, written, u, U, status } = rowOf(name)
      return { name, value, written, u, U, status }
    }),
  }
}
