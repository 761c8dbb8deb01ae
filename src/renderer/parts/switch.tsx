import './switch.css'
import { Checkbox } from 'react-aria-components'
import { Icon } from './icon.tsx'

interface SwitchProps {
  label: string
  on: boolean
  onChange: (on: boolean) => void
  /** One line on what it does. */
  note?: string
  disabled?: boolean
}

/** Something that is so or not so. */
export function Switch({ label, on, onChange, note, disabled = false }: SwitchProps) {
  return (
    <Checkbox className="switch" isSelected={on} onChange={onChange} isDisabled={disabled}>
      <span className="switch-box">
        <Icon name="check" />
      </span>
      <span>
        {label}
        {note !== undefined && <span className="switch-note">{note}</span>}
      </span>
    </Checkbox>
  )
}
