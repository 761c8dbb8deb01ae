import type { TableView } from '../../../core/ledger/table/table.ts'
import { howOften } from '../../../core/words/how-often.ts'

/** Below this probability the references are taken not to agree. */
const DOUBTED = 0.05

/** How well the known sizes of a view agree with one another, for somebody who cuts metal. */
export function agreement({ chi2, dof, p }: Pick<TableView, 'chi2' | 'dof' | 'p'>): string {
  if (chi2 === null || p === null || dof === 0) {
    return 'Nothing checks these sizes yet: one more known size would.'
  }
  const said =
    p >= DOUBTED ? 'The known sizes agree as well as picks can tell' : 'The known sizes do not agree'
  return `${said}: good sizes would differ this much ${howOften(p)} (chi-square ${chi2.toFixed(1)}, ${dof} to spare, p ${p < 0.001 ? '< 0.001' : p.toPrecision(2)}).`
}

/** How far the scale found is from the one stated: `0.3 % smaller than stated`. */
export function offStated(found: number, stated: number): string {
  const off = 100 * (found / stated - 1)
  if (Math.abs(off) < 0.05) return 'as stated'
  return `${Math.abs(off).toFixed(1)} % ${off < 0 ? 'smaller' : 'larger'} than stated`
}
