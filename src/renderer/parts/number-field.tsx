import './field.css'
import { NumberField as AriaNumberField, Input, Label } from 'react-aria-components'
import { FieldNote } from './field-note.tsx'

interface NumberFieldProps {
  label: string
  /** NaN: nothing is written. */
  value: number
  onChange: (value: number) => void
  least?: number
  most?: number
  step?: number
  /** Decimals that are shown. */
  places?: number
  suffix?: string
  note?: string
  disabled?: boolean
}

/** A number that is taken when one leaves the field or presses Enter; the arrow keys step it. */
export function NumberField(props: NumberFieldProps) {
  const { label, value, onChange, least, most, step, places = 0, suffix, note, disabled = false } = props
  return (
    <AriaNumberField
      className="field"
      value={value}
      onChange={onChange}
      isDisabled={disabled}
      formatOptions={{ maximumFractionDigits: places, useGrouping: false }}
      {...(least === undefined ? {} : { minValue: least })}
      {...(most === undefined ? {} : { maxValue: most })}
      {...(step === undefined ? {} : { step })}
    >
      <Label className="field-label">{label}</Label>
      <div className="field-box">
        <Input className="field-input" />
        {suffix !== undefined && <span className="field-suffix">{suffix}</span>}
      </div>
      <FieldNote note={note} />
    </AriaNumberField>
  )
}
