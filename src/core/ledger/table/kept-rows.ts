import { namesInRelation } from '../../formula/relation-text.ts'
import { element } from '../../linear-algebra/element.ts'
import type { Assessed } from '../assessment/assessed.ts'
import type { Assessment } from '../assessment/assessment.ts'
import { dimensionRow } from './dimension-row.ts'
import type { TableRelation, TableRow } from './table.ts'

/** A dimension's row, and the relations that it was made with. */
export interface KeptRow {
  row: TableRow
  relations: readonly TableRelation[]
}

const NONE: readonly TableRelation[] = []

/**
 * The rows of the dimensions in the order of the job.
 * @param dimensions in that order
 * @param by what each is uncertain by
 * @param relations as the table has them
 * @param before rows that were made before: those of what is still assessed the same, in the same relations, are taken
 *   from them. Whatever else is named in a row was consulted in assessing it, so that its label is the same as well
 */
export function keptRows(
  dimensions: readonly Assessed[],
  by: readonly TableRow['by'][],
  assessment: Assessment,
  relations: Iterable<TableRelation>,
  before: ReadonlyMap<Assessed, KeptRow> | undefined,
): Map<Assessed, KeptRow> {
  const standsIn = relationsByName(relations)
  const rows = new Map<Assessed, KeptRow>()
  dimensions.forEach((assessed, i) => {
    const own = standsIn.get(assessed.dimension.name) ?? NONE
    const was = before?.get(assessed)
    rows.set(
      assessed,
      was !== undefined && sameItems(was.relations, own)
        ? withBy(was, element(by, i))
        : { row: dimensionRow(assessed, element(by, i), assessment, own), relations: own },
    )
  })
  return rows
}

/** The same row where it is uncertain by the same. */
function withBy(kept: KeptRow, by: TableRow['by']): KeptRow {
  const { row } = kept
  const ids = Object.keys(by)
  const same = ids.length === Object.keys(row.by).length && ids.every((id) => by[id] === row.by[id])
  return same ? kept : { ...kept, row: { ...row, by } }
}

function relationsByName(relations: Iterable<TableRelation>): Map<string, TableRelation[]> {
  const byName = new Map<string, TableRelation[]>()
  for (const relation of relations) {
    for (const name of namesInRelation(relation.text)) {
      const own = byName.get(name)
      if (own === undefined) byName.set(name, [relation])
      else own.push(relation)
    }
  }
  return byName
}

const sameItems = <T>(a: readonly T[], b: readonly T[]): boolean =>
  a.length === b.length && a.every((item, i) => item === b[i])
