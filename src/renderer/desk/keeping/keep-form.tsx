import './keep-form.css'
import { type ReactNode, useEffect, useRef, useState } from 'react'
import { useBench } from '../../bench/bench-store.ts'
import { Button } from '../../parts/button.tsx'
import { isLooking } from '../../picking/picks.ts'

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

/**
 * A form that belongs to picks: Enter keeps, Esc cancels. While a stroke is still looked for under them, keeping waits
 * for it: else what is kept would be the rough pick.
 */
export function KeepForm(props: KeepFormProps) {
  const { label, children, keep, onKeep, onAbandon, disabled = false, startAtKeep = false } = props
  const keeping = useRef(false)
  const looking = useBench(({ picks }) => isLooking(picks))
  const [asked, setAsked] = useState(false)
  const submit = async () => {
    if (keeping.current || disabled) return
    keeping.current = true
    try {
      await onKeep()
    } finally {
      keeping.current = false
    }
  }
  useEffect(() => {
    if (!asked || looking) return
    setAsked(false)
    void submit()
  })
  return (
    <form
      className="keep-form"
      aria-label={label}
      onSubmit={(event) => {
        event.preventDefault()
        if (looking) setAsked(true)
        else void submit()
      }}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || event.defaultPrevented) return
        event.preventDefault()
        onAbandon()
      }}
    >
      {children}
      {asked && (
        <p className="block-soft" role="status">
          It is kept as soon as the stroke has been looked for.
        </p>
      )}
      <div className="keep-form-foot">
        <Button type="submit" kind="main" disabled={disabled} autoFocus={startAtKeep}>
          {keep}
        </Button>
        <Button onPress={onAbandon}>Cancel</Button>
      </div>
    </form>
  )
}
