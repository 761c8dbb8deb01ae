import type { TableView } from '../../ledger/table/table.ts'

/** How large a view is on the scan one way of its paper, against its scale as stated. */
export interface AxisShare {
  way: 'along' | 'across'
  /** Drawn size over true size that way, by the scan's dpi. */
  found: number
  /** By what share larger than stated, negative: smaller; null where no scale is stated. */
  off: number | null
  /** Expanded uncertainty of that share, 95 %. */
  U: number
}

/** Of a normal distribution, 95 %. */
const COVERAGE = 1.96

/** The two scales of a view that has one each way; null for any other, and where the dpi of the scan is not known. */
export function axisShares({ mapping, parameters, scale }: TableView): [AxisShare, AxisShare] | null {
  const { along, across } = parameters
  const found = scale?.found
  if (mapping !== 'two-axis' || along === undefined || across === undefined || found == null) return null
  // The one scale that is given is that of areas: the mean of the two.
  const mean = Math.sqrt(along.value * across.value)
  const share = (way: AxisShare['way'], { value, u }: { value: number; u: number }): AxisShare => {
    const own = (found * mean) / value
    const stated = scale?.stated ?? null
    return { way, found: own, off: stated === null ? null : own / stated - 1, U: (COVERAGE * u) / value }
  }
  return [share('along', along), share('across', across)]
}

/** `1.5 % ± 0.3 % smaller across`, or `as stated ± 0.3 % across`; of a view whose scale is not stated, nothing. */
export function axisShareInWords(share: AxisShare): string | null {
  const off = offInWords(share)
  return off === null ? null : `${off.by}${off.which} ${share.way}`
}

/** `1.5 % ± 0.3 % smaller than stated`, or `as stated ± 0.3 %`; of a view whose scale is not stated, nothing. */
export function offStatedInWords(share: AxisShare): string | null {
  const off = offInWords(share)
  if (off === null) return null
  return off.which === '' ? off.by : `${off.by}${off.which} than stated`
}

function offInWords({ off, U }: AxisShare): { by: string; which: '' | ' smaller' | ' larger' } | null {
  if (off === null) return null
  const places = U >= 0.002 ? 1 : 2
  const percent = (value: number): string => `${(100 * Math.abs(value)).toFixed(places)} %`
  // What rounds to nothing is neither.
  if (Number((100 * off).toFixed(places)) === 0) return { by: `as stated ± ${percent(U)}`, which: '' }
  return { by: `${percent(off)} ± ${percent(U)}`, which: off < 0 ? ' smaller' : ' larger' }
}
