import './field.css'
import type { ReactNode } from 'react'
import { TextField as AriaTextField, FieldError, Input, Label, TextArea } from 'react-aria-components'
import { FieldNote } from './field-note.tsx'

export interface TextFieldProps {
  label: string
  value: string
  onChange: (value: string) => void
  /** One line on what is wanted. */
  note?: ReactNode
  /** A sentence; empty or left out when the value is good. */
  error?: string | undefined
  /** Stands behind the value, e.g. a unit. */
  suffix?: string
  placeholder?: string
  lines?: number
  /** Whether what is written is not to be seen. */
  secret?: boolean
  disabled?: boolean
  /** Whether it can be read and copied, and not changed. */
  fixed?: boolean
  autoFocus?: boolean
  /** Whether it shows what is kept, so that undo in it is that of the job. */
  kept?: boolean
  /** `decimal` brings up digits on a screen keyboard. */
  inputMode?: 'text' | 'decimal' | 'numeric'
  onBlur?: () => void
  onEnter?: () => void
  onEscape?: () => void
}

export function TextField(props: TextFieldProps) {
  const { label, value, onChange, note, error, suffix, lines } = props
  const wrong = error !== undefined && error !== ''
  return (
    <AriaTextField
      className="field"
      value={value}
      onChange={onChange}
      isInvalid={wrong}
      isDisabled={props.disabled ?? false}
      isReadOnly={props.fixed ?? false}
      validationBehavior="aria"
      {...(props.autoFocus === true ? { autoFocus: true } : {})}
      {...(props.onBlur === undefined ? {} : { onBlur: props.onBlur })}
      onKeyDown={(event) => {
        const then =
          event.key === 'Enter' ? props.onEnter : event.key === 'Escape' ? props.onEscape : undefined
        if (then === undefined) event.continuePropagation()
        else {
          event.preventDefault()
          then()
        }
      }}
    >
      <Label className="field-label">{label}</Label>
      <div className="field-box">
        {lines === undefined ? (
          <Input
            className="field-input"
            placeholder={props.placeholder}
            data-kept={props.kept === true || undefined}
            inputMode={props.inputMode}
            {...(props.secret === true ? { type: 'password' } : {})}
            autoComplete="off"
            spellCheck={false}
          />
        ) : (
          <TextArea
            className="field-input"
            rows={lines}
            placeholder={props.placeholder}
            data-kept={props.kept === true || undefined}
          />
        )}
        {suffix !== undefined && <span className="field-suffix">{suffix}</span>}
      </div>
      <FieldNote note={note} />
      <FieldError className="field-error">{error}</FieldError>
    </AriaTextField>
  )
}
