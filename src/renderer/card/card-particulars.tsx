import { useRef } from 'react'
import { makeEdit, makeThen } from '../bench/edits.ts'
import { Button } from '../parts/button.tsx'
import { SavedField } from '../parts/saved-field.tsx'
import { Section } from '../parts/section.tsx'
import { changeInPlace } from '../table/change-in-place.ts'
import type { ColumnName } from '../table/columns.ts'
import type { CardProps } from './card-props.ts'
import { fieldEdit, fieldProblem } from './changed-field.ts'

/** Name, label, how many, tolerance, note; and taking the dimension away. */
export function CardParticulars({ job, dimension, row, writable }: CardProps) {
  const { name } = dimension
  /** What it is called when it is the turn of what was entered: another name may have been kept before that. */
  const called = useRef(name)
  called.current = name
  const inPlace = (column: ColumnName) => ({
    check: (text: string) => {
      const change = changeInPlace(job, name, column, text)
      return change !== null && 'refused' in change ? change.refused : null
    },
    onSave: (text: string) => makeThen((now) => changeInPlace(now, called.current, column, text)),
    disabled: !writable,
  })
  const field = (which: 'tolerance' | 'note') => ({
    check: (text: string) => fieldProblem(job, name, which, text),
    onSave: (text: string) => makeThen(() => ({ edit: fieldEdit(called.current, which, text) })),
    disabled: !writable,
  })
  return (
    <Section title="Particulars" fold="open">
      <SavedField label="What it is" value={dimension.label} {...inPlace('label')} />
      <SavedField
        label="Name in formulas"
        value={name}
        note="Formulas and relations that use it are changed along with it."
        {...inPlace('name')}
      />
      <SavedField
        label="How many off"
        value={String(dimension.count ?? 1)}
        inputMode="numeric"
        {...inPlace('count')}
      />
      <SavedField
        label="Tolerance"
        value={dimension.tolerance ?? ''}
        note={
          dimension.tolerance === undefined && row?.tolerance !== undefined
            ? `As the sheet has it: ${row.tolerance}`
            : `As stated for this one, e.g. ${job.unit === 'in' ? '±1/32"' : '±0.5 mm'}.`
        }
        {...field('tolerance')}
      />
      <SavedField label="Note" value={dimension.note ?? ''} lines={2} {...field('note')} />
      {writable && dimension.evidence.length === 0 && (
        <div className="dimension-card-actions">
          <Button kind="danger" icon="bin" onPress={() => void makeEdit({ do: 'remove-dimension', name })}>
            Remove this dimension
          </Button>
        </div>
      )}
      {writable && dimension.evidence.length > 0 && (
        <p className="dimension-card-small">
          A dimension with evidence is not removed, for evidence is never deleted: withdraw what no longer
          counts.
        </p>
      )}
    </Section>
  )
}
