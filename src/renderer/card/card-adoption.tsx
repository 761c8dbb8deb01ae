import { labelOf, labelOfId } from '../../core/job/ids/label.ts'
import type { TableRow } from '../../core/ledger/table/table.ts'
import { makeEdit } from '../bench/edits.ts'
import { signature } from '../bench/signature.ts'
import { Picker } from '../parts/picker.tsx'
import { Section } from '../parts/section.tsx'
import { useKept } from '../parts/use-kept.ts'
import { adoptionOptions, BY_THE_RULES } from './adoption-options.ts'
import type { CardProps } from './card-props.ts'

/** Which value the table gives: by the rules, or by choice, and whose choice that was. */
export function CardAdoption({ job, dimension, row, writable }: CardProps & { row: TableRow }) {
  const { name, adopt, adoptedBy, adoptedAt } = dimension
  const options = adoptionOptions(row, adopt)
  const { shown: value, keep } = useKept(adopt ?? BY_THE_RULES, (id) =>
    makeEdit(
      id === BY_THE_RULES ? { do: 'adopt', dimension: name } : { do: 'adopt', dimension: name, adopt: id },
    ),
  )
  const chosen = options.find(({ id }) => id === value)
  // The row may be older than the job: evidence that came with what was adopted is not in it yet.
  const piece = dimension.evidence.find(({ id }) => id === value)
  const signed = adopt === undefined ? null : signature(job, adoptedBy, adoptedAt)
  return (
    <Section title="Adopted value">
      {writable ? (
        <Picker
          label="Which evidence it is taken from"
          value={value}
          options={options}
          note={chosen?.note}
          onChange={(id) => void keep(id)}
        />
      ) : (
        <p>{chosen?.label ?? (piece === undefined ? labelOfId(value) : labelOf(piece))}, by choice.</p>
      )}
      {signed !== null && <p className="dimension-card-small">Adopted by {signed}</p>}
    </Section>
  )
}
