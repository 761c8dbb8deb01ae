import { useEffect, useState } from 'react'
import type { AnyReason } from '../../core/words/reason.ts'
import { reason, sentenceOf } from '../words/window-words.ts'
import { TextField, type TextFieldProps } from './text-field.tsx'
import { holdUnkept } from './unkept.ts'
import { useKept } from './use-kept.ts'

interface SavedFieldProps
  extends Omit<TextFieldProps, 'onChange' | 'onBlur' | 'onEnter' | 'onEscape' | 'error' | 'kept'> {
  /** Keeps a changed value; false when it was refused, and what was written then stays in the field. */
  onSave: (value: string) => Promise<boolean>
  /** Why a value can't be kept; null when it can. */
  check?: (value: string) => AnyReason | null
}

const elsewhere = (now: string, several: boolean): AnyReason =>
  reason(several ? 'written.text-changed-elsewhere' : 'written.changed-elsewhere', { now })

/** A field that is kept when one leaves it or presses Enter, also while it is still being kept; Esc gives up. */
export function SavedField({ value, onSave, check, disabled = false, ...rest }: SavedFieldProps) {
  /** What is written and not kept yet; null: nothing, and the field shows what is in the job. */
  const [draft, setDraft] = useState<string | null>(null)
  const [refused, setRefused] = useState<string | null>(null)
  /** shown: what the job has, once all that was entered here is kept. */
  const { shown, keep } = useKept(value, onSave)
  const changed = draft !== null && draft !== shown && draft.trim() !== shown
  /** What can't be kept any more stays to be read and copied. */
  const left = changed && disabled
  const problem = changed ? (check?.(draft) ?? null) : null
  /** What the job had when the writing began, or what came to it from here since. */
  const [began, setBegan] = useState(value)
  if (draft === null && began !== value) setBegan(value)
  const isElsewhere = changed && shown === value && value !== began
  const several = rest.lines !== undefined
  useEffect(() => (changed ? holdUnkept() : undefined), [changed])

  const save = async (byKey = false) => {
    // What somebody else wrote meanwhile is not written over by leaving the field.
    if (isElsewhere && !byKey && !several) return
    if (!changed) setDraft((now) => (shown === value ? null : now))
    if (!changed || disabled || problem !== null) return
    const saved = await keep(draft.trim())
    if (saved) {
      setBegan(draft.trim())
      setDraft((now) => (now === draft ? null : now))
    }
    setRefused(saved ? null : draft)
  }
  return (
    <TextField
      {...rest}
      value={draft ?? shown}
      // As it is in the job it goes on following the job.
      onChange={(text) => setDraft(text === value && shown === value ? null : text)}
      kept={draft === null && shown === value}
      disabled={disabled && !left}
      fixed={left}
      error={sentenceOf(
        left
          ? reason('written.only-looking')
          : (problem ??
              (isElsewhere ? elsewhere(value, several) : null) ??
              (changed && draft === refused ? reason('written.not-kept') : null)),
      )}
      onBlur={() => void save()}
      {...(rest.lines === undefined ? { onEnter: () => void save(true) } : {})}
      onEscape={() => setDraft(null)}
    />
  )
}
