import { useEffect, useRef, useState } from 'react'
import { TextField, type TextFieldProps } from './text-field.tsx'

interface SavedFieldProps
  extends Omit<TextFieldProps, 'onChange' | 'onBlur' | 'onEnter' | 'onEscape' | 'error'> {
  /** Keeps a changed value; false when it was refused, and the field then shows the old one again. */
  onSave: (value: string) => Promise<boolean>
  /** Why a value can't be kept, in a sentence; empty when it can. */
  check?: (value: string) => string
}

/** A field that is kept when one leaves it or presses Enter; Esc gives up. */
export function SavedField({ value, onSave, check, ...rest }: SavedFieldProps) {
  const [draft, setDraft] = useState(value)
  const given = useRef(false)
  useEffect(() => setDraft(value), [value])
  const error = draft === value ? '' : (check?.(draft) ?? '')

  const save = async () => {
    if (given.current) {
      given.current = false
      return
    }
    if (draft.trim() === value || error !== '') return
    if (!(await onSave(draft.trim()))) setDraft(value)
  }
  return (
    <TextField
      {...rest}
      value={draft}
      onChange={setDraft}
      error={error}
      onBlur={() => void save()}
      {...(rest.lines === undefined ? { onEnter: () => void save() } : {})}
      onEscape={() => {
        setDraft(value)
        if (document.activeElement instanceof HTMLElement) {
          given.current = true
          document.activeElement.blur()
        }
      }}
    />
  )
}
