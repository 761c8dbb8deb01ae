import './field.css'
import './list.css'
import './picker.css'
import type { ReactNode } from 'react'
import { Button, Label, ListBox, Popover, Select, SelectValue } from 'react-aria-components'
import { FieldNote } from './field-note.tsx'
import { Icon } from './icon.tsx'
import { ListOption } from './list-option.tsx'

export interface PickerOption<T extends string> {
  id: T
  label: string
  /** A line under it in the list. */
  note?: string
}

interface PickerProps<T extends string> {
  label: string
  /** null: nothing is chosen yet. */
  value: T | null
  options: readonly PickerOption<T>[]
  onChange: (value: T) => void
  note?: ReactNode
  placeholder?: string
  disabled?: boolean
}

/** One of several, from a list that opens. */
export function Picker<T extends string>(props: PickerProps<T>) {
  const { label, value, options, onChange, note } = props
  const chosen = options.find(({ id }) => id === value)
  return (
    <Select
      className="field"
      value={value}
      onChange={(id) => {
        const option = options.find((one) => one.id === id)
        if (option !== undefined) onChange(option.id)
      }}
      isDisabled={props.disabled ?? false}
    >
      <Label className="field-label">{label}</Label>
      <div className="field-box">
        <Button className="picker-button">
          <SelectValue className="picker-value">
            {() => chosen?.label ?? props.placeholder ?? 'Choose'}
          </SelectValue>
          <Icon name="down" />
        </Button>
      </div>
      <FieldNote note={note} />
      <Popover className="list-popover" offset={2}>
        <ListBox className="list-box" items={options}>
          {(option) => <ListOption {...option} />}
        </ListBox>
      </Popover>
    </Select>
  )
}
