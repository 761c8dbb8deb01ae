import type { Unit } from '../../core/job/model/types.ts'
import { unitSuffix } from '../../core/ledger/units/plus-minus.ts'
import { twoFigures } from '../../core/quantity/format/rounding.ts'
import type { AgreementPoint } from './agreement-points.ts'

/** A point of the chart in words: `neck_height: scaled 0.51" below printed, ± 0.095"; disputed`. */
export function agreementWords({ name, deviation, U, disputed }: AgreementPoint, unit: Unit): string {
  const suffix = unitSuffix('length', unit)
  const size = twoFigures(Math.abs(deviation))
  const where =
    deviation === 0 ? 'as printed' : `${size}${suffix} ${deviation < 0 ? 'below' : 'above'} printed`
  return `${name}: scaled ${where}, ± ${twoFigures(U)}${suffix}; ${disputed ? 'disputed' : 'agrees'}`
}
