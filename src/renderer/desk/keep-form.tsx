import './keep-form.css'
import { type ReactNode, useState } from 'react'
import { Button } from '../parts/button.tsx'

interface KeepFormProps {
  label: string
  children: ReactNode
  /** Words on the button that keeps. */
  keep: string
  /** Keeps what is written; true once it is done. */
  onKeep: () => Promise<boolean>
  onAbandon: () => void
  disabled?: boolean
}

/** A form that belongs to picks: Enter keeps, Esc abandons. */
export function KeepForm({ label, children, keep, onKeep, onAbandon, disabled = false }: KeepFormProps) {
  const [busy, setBusy] = useState(false)
  const submit = async () => {
    if (busy || disabled) return
    setBusy(true)
    if (!(await onKeep())) setBusy(false)
  }
  return (
    <form
      className="keep-form"
      aria-label={label}
      onSubmit={(event) => {
        event.preventDefault()
        void submit()
      }}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || event.defaultPrevented) return
        event.preventDefault()
        onAbandon()
      }}
    >
      {children}
      <div className="keep-form-foot">
        <Button type="submit" kind="main" disabled={disabled || busy}>
          {keep}
        </Button>
        <Button onPress={onAbandon}>Abandon</Button>
      </div>
    </form>
  )
}
