import { element } from '../../linear-algebra/element.ts'
import { KNOWN, type VarianceEstimate } from '../../uncertainty/source.ts'
import { ownAndShared } from './own-and-shared.ts'
import type { RowValue } from './reach.ts'
import type { TableRow, TableSource } from './table.ts'

/** What the rows of a table are uncertain by, and what each of it contributes to each row. */
export interface TableSources {
  sources: TableSource[]
  /** For each row, in their order; empty where it is open or exact. */
  by: TableRow['by'][]
}

/**
 * The sources of error of a table's rows, so that their correlations can be had from the table alone:
 * u² of a row is the sum of its squares, the covariance of two that of their products, and the effective degrees of
 * freedom of whatever is worked out from rows come by Welch–Satterthwaite as they would from all single sources.
 * Sources that no sum of rows can tell apart count as one. No result depends on when a source was made.
 * Source: JCGM 100:2008, F.1.2.3 (eq. F.2) and G.4.1 (eq. G.2b).
 */
export function tableSources(rows: readonly RowValue[]): TableSources {
  const { own, shared } = ownAndShared(rows)
  const sources = new SourceList()
  const by = rows.map((): TableRow['by'] => ({}))
  let numbered = 0
  rows.forEach(({ name }, row) => {
    for (const { labels, estimate, reached, parts } of shared.get(row) ?? []) {
      const id = sources.add(`s${++numbered}`, labels.join(', '), estimate)
      reached.forEach((moved, k) => {
        element(by, moved)[id] = element(parts, k)
      })
    }
    // A row's own are called by the row, so that they keep their ids when other rows come and go.
    element(own, row).forEach(({ estimate, square }, k) => {
      const id = sources.add(`own.${name}${k === 0 ? '' : `.${k + 1}`}`, `only in ${name}`, estimate)
      element(by, row)[id] = Math.sqrt(square)
    })
  })
  return { sources: sources.list, by }
}

/** Sources as they are listed; an estimate of variance is called by the first that rests on it. */
class SourceList {
  readonly list: TableSource[] = []
  private readonly firsts = new Map<VarianceEstimate, string>()

  /** @returns the id */
  add(id: string, name: string, estimate: VarianceEstimate): string {
    if (estimate === KNOWN) this.list.push({ id, name })
    else {
      const first = this.firsts.get(estimate) ?? id
      this.firsts.set(estimate, first)
      this.list.push({ id, name, dof: estimate.dof, estimate: first })
    }
    return id
  }
}
