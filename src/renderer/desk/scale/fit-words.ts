import type { MappingKind, Unit } from '../../../core/job/model/types.ts'
import type { TableView } from '../../../core/ledger/table/table.ts'

const minus = (digits: string): string => digits.replace(/^-(?=[0.]+$)/, '').replace('-', '−')

/** A number to so many decimals; nothing has no sign. */
export const plainNumber = (value: number, places: number): string => minus(value.toFixed(places))

/** A length in decimals: `11.497"`, `292.02 mm`. */
export const decimals = (value: number, unit: Unit): string =>
  unit === 'in' ? `${minus(value.toFixed(3))}"` : `${minus(value.toFixed(2))} mm`

/** A difference with its sign: `+0.003"`. */
export const difference = (value: number, unit: Unit): string => {
  const text = decimals(value, unit)
  return /^[−]|^0[.0]*(?:"| mm)$/.test(text) ? text : `+${text}`
}

/** Each mapping, and when it is right. */
export const MAPPING_WORDS: Readonly<Record<MappingKind, { label: string; when: string }>> = {
  uniform: {
    label: 'One',
    when: 'One scale all over, for a sheet that has kept its shape. Needs one known size.',
  },
  'two-axis': {
    label: 'Two',
    when: 'One scale along the sheet and one up it, for paper shrinks more one way. Needs two known sizes, one each way.',
  },
  affine: {
    label: 'Skewed',
    when: 'Two scales and a skew, for a sheet or copy pulled out of square. Needs three known sizes in three directions.',
  },
  projective: {
    label: 'Tilted',
    when: 'For a photograph that was not taken square on. Needs five known sizes, best a rectangle and lengths far apart.',
  },
}

/** Below this probability the references are taken not to agree. */
const DOUBTED = 0.05

/** A probability as people count. */
function howOften(p: number): string {
  if (p < 0.001) return 'less than once in a thousand'
  const times = Math.round(100 * p)
  if (times < 1) return 'less than once in a hundred'
  return times === 1 ? 'once in a hundred' : `${times} times in a hundred`
}

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
