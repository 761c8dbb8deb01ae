import type { TableRow } from '../../core/ledger/table/table.ts'
import { makeEdit } from '../bench/edits.ts'
import { Picker } from '../parts/picker.tsx'
import { Section } from '../parts/section.tsx'
import { adoptionOptions, BY_THE_RULES } from './adoption-options.ts'
import type { CardProps } from './card-props.ts'

/** Which value the table gives: by the rules, or by choice. */
export function CardAdoption({ dimension, row }: CardProps & { row: TableRow }) {
  const { name, adopt } = dimension
  const options = adoptionOptions(row, adopt)
  const value = adopt ?? BY_THE_RULES
  return (
    <Section title="Adopted value">
      <Picker
        label="Which evidence it is taken from"
        value={value}
        options={options}
        note={options.find(({ id }) => id === value)?.note}
        onChange={(id) =>
          void makeEdit(
            id === BY_THE_RULES
              ? { do: 'adopt', dimension: name }
              : { do: 'adopt', dimension: name, adopt: id },
          )
        }
      />
    </Section>
  )
}
