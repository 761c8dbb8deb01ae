import './keep-form.css'
import { type ReactNode, useRef } from 'react'
import { Button } from '../parts/button.tsx'

interface KeepFormProps {
  label: string
  children: ReactNode
  /** Words on the button that keeps. */
  keep: string
  /** Keeps what is written; when it is refused, all of it stays. */
  onKeep: () => Promise<unknown>
  onAbandon: () => void
  disabled?: boolean
  /** Whether the keyboard begins at the button that keeps, where there is nothing to write. */
  startAtKeep?: boolean
}

/** A form that belongs to picks: Enter keeps, Esc abandons. */
export function KeepForm(props: KeepFormProps) {
  const { label, children, keep, onKeep, onAbandon, disabled = false, startAtKeep = false } = props
  const keeping = useRef(false)
  const submit = async () => {
    if (keeping.current || disabled) return
    keeping.current = true
    try {
      await onKeep()
    } finally {
      keeping.current = false
    }
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
        <Button type="submit" kind="main" disabled={disabled} autoFocus={startAtKeep}>
          {keep}
        </Button>
        <Button onPress={onAbandon}>Abandon</Button>
      </div>
    </form>
  )
}
