import { useRef, useState } from 'react'
import type { AnyReason } from '../../core/words/reason.ts'
import { reason, sentenceOf } from '../words/window-words.ts'
import { TextField, type TextFieldProps } from './text-field.tsx'

interface SavedFieldProps
  extends Omit<TextFieldProps, 'onChange' | 'onBlur' | 'onEnter' | 'onEscape' | 'error'> {
  /** Keeps a changed value; false when it was refused, and what was written then stays in the field. */
  onSave: (value: string) => Promise<boolean>
  /** Why a value can't be kept; null when it can. */
  check?: (value: string) => AnyReason | null
}

/** A field that is kept when one leaves it or presses Enter; Esc gives up. */
export function SavedField({ value, onSave, check, disabled = false, ...rest }: SavedFieldProps) {
  /** What is written and not kept yet; null: nothing, and the field shows what is in the job. */
  const [draft, setDraft] = useState<string | null>(null)
  const [refused, setRefused] = useState<string | null>(null)
  const saving = useRef(false)
  const changed = draft !== null && draft !== value && draft.trim() !== value
  /** What can't be kept any more stays to be read and copied. */
  const left = changed && disabled
  const problem = changed ? (check?.(draft) ?? null) : null

  const save = async () => {
    if (!changed) setDraft(null)
    if (!changed || disabled || saving.current || problem !== null) return
    saving.current = true
    const saved = await onSave(draft.trim()).finally(() => {
      saving.current = false
    })
    if (saved) setDraft((now) => (now === draft ? null : now))
    setRefused(saved ? null : draft)
  }
  return (
    <TextField
      {...rest}
      value={draft ?? value}
      onChange={setDraft}
      disabled={disabled && !left}
      fixed={left}
      error={sentenceOf(
        left
          ? reason('written.only-looking')
          : (problem ?? (changed && draft === refused ? reason('written.not-kept') : null)),
      )}
      onBlur={() => void save()}
      {...(rest.lines === undefined ? { onEnter: () => void save() } : {})}
      onEscape={() => setDraft(null)}
    />
  )
}
