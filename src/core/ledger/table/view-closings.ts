import type { ClosingSize, ClosureCheck } from '../../calibration/closure-checks.ts'
import type { View } from '../../job/model/types.ts'
import { formatLength } from '../../quantity/format/format-length.ts'
import { inWords, reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import { displayFactor } from '../units/display-units.ts'
import type { TableClosing } from './table.ts'

/** How the closings of a view are written. */
interface Style {
  view: View
  unit: 'in' | 'mm'
}

/** A closing as the table has it, in its unit, and in words. */
export function closingRow(
  check: ClosureCheck,
  style: Style,
  named: (reason: AnyReason) => AnyReason,
): TableClosing {
  const factor = displayFactor('length', style.unit)
  const saysReason = named(closingReason(check, style))
  return {
    kind: check.kind,
    by: check.by.map(({ id }) => id),
    given: check.given.map(({ id }) => id),
    expected: check.expected * factor,
    stated: check.stated * factor,
    misclosure: check.misclosure * factor,
    u: check.u * factor,
    closes: check.closes,
    says: inWords(saysReason),
    saysReason,
  }
}

/** A share of a length that is rounding of the computer. */
const NOTHING = 1e-9

function closingReason(check: ClosureCheck, style: Style): AnyReason {
  const { expected, stated, misclosure, closes } = check
  const write = writer(check, style)
  const parts = {
    by: check.by.map(named),
    given: check.given.map(named),
    expected: write(expected),
    stated: write(stated),
    out: Math.abs(misclosure) <= NOTHING * Math.abs(stated) ? null : write(Math.abs(misclosure)),
    closes,
  }
  switch (check.kind) {
    case 'same':
      return reason('closing.same', parts)
    case 'sum':
      return reason('closing.sum', parts)
    case 'shape':
      return reason('closing.shape', parts)
  }
}

const named = ({ id, part }: ClosingSize): { id: string; part?: string } =>
  part === undefined ? { id } : { id, part }

/** Lengths in shop notation, with feet where the figured sizes have them; sums of figures are exact, shapes are not. */
function writer({ kind, misclosure, u }: ClosureCheck, { view, unit }: Style): (mm: number) => string {
  const feet = view.references.some((r) => /['′]|ft/i.test(r.kind === 'rectangle' ? r.width : r.size))
  const worth = kind === 'shape' ? { uncertainty: Math.max(u, Math.abs(misclosure) / 5, 0.01) } : {}
  return (mm) => formatLength(mm, { unit, feet, ...worth })
}
