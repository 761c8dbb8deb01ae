import './field.css'
import './list.css'
import './picker.css'
import { Button, ComboBox, Input, Label, ListBox, Popover } from 'react-aria-components'
import { Icon } from './icon.tsx'
import { ListOption } from './list-option.tsx'
import type { PickerOption } from './picker.tsx'

interface ComboProps<T extends string> {
  label: string
  value: T | null
  options: readonly PickerOption<T>[]
  onChange: (value: T | null) => void
  placeholder?: string
  autoFocus?: boolean
  /** Whether the list opens as the keyboard comes to it, where it is what the keyboard came for. */
  opensAtOnce?: boolean
}

/** One of many, found by typing a part of it. */
export function Combo<T extends string>(props: ComboProps<T>) {
  const { label, value, options, onChange } = props
  return (
    <ComboBox
      className="field"
      value={value}
      onChange={(id) => onChange(options.find((one) => one.id === id)?.id ?? null)}
      defaultItems={options}
      menuTrigger={props.opensAtOnce === true ? 'focus' : 'input'}
      allowsEmptyCollection
      {...(props.autoFocus === true ? { autoFocus: true } : {})}
    >
      <Label className="field-label">{label}</Label>
      <div className="field-box">
        <Input className="field-input" placeholder={props.placeholder} spellCheck={false} />
        <Button className="button" data-kind="quiet" aria-label="Show all">
          <Icon name="down" />
        </Button>
      </div>
      <Popover className="list-popover" offset={2}>
        <ListBox
          className="list-box"
          renderEmptyState={() => <p className="list-empty">None of that name.</p>}
        >
          {(option: PickerOption<T>) => <ListOption {...option} />}
        </ListBox>
      </Popover>
    </ComboBox>
  )
}
