import { basisWord } from '../../core/job/ids/basis-word.ts'
import type { TableRow } from '../../core/ledger/table/table.ts'
import type { PickerOption } from '../parts/picker.tsx'

/** By the rules: what `adopt` is when it is left out. */
export const BY_THE_RULES = 'by the rules'

const RULES: readonly { id: string; label: string; note: string }[] = [
  { id: 'printed', label: 'Printed', note: 'The clear printed figure.' },
  { id: 'scaled', label: 'Scaled', note: 'Off the sheet; the mean where there are several.' },
  { id: 'found', label: 'Measured', note: 'Measured on the original; the mean where there are several.' },
  { id: 'derived', label: 'Derived', note: 'Worked out from other dimensions.' },
  { id: 'mean', label: 'Mean', note: 'Weighted mean of all that can be used.' },
]

/** The ways to settle which value a dimension takes, and the one that is followed now. */
export function adoptionOptions(row: TableRow, adopt: string | undefined): PickerOption<string>[] {
  const usable = row.evidence.filter(({ value }) => value !== null)
  const bases = new Set<string>(usable.map(({ basis }) => basis))
  return [
    {
      id: BY_THE_RULES,
      label: 'By the rules',
      note: 'Printed governs, then derived, then scaled, then measured.',
    },
    ...RULES.filter(({ id }) => id === adopt || (id === 'mean' ? usable.length > 1 : bases.has(id))),
    ...row.evidence
      .filter(({ id, value }) => value !== null || id === adopt)
      .map(({ id, label = id, basis, written }) => ({
        id,
        label: `Only ${label}`,
        note: `${basisWord(basis)} ${written}`.trim(),
      })),
  ]
}
