import './keep-form.css'
import { type ReactNode, useEffect, useRef, useState } from 'react'
import { useBench } from '../../bench/bench-store.ts'
import { Button } from '../../parts/button.tsx'
import { useInSight } from '../../parts/use-in-sight.ts'
import { isLooking } from '../../picking/picks.ts'

interface KeepFormProps {
  label: string
  children: ReactNode
  /** Words on the button that keeps. */
  keep: string
  /**
   * Keeps what is written; when it is refused, all of it stays.
   * @param again whether what comes next is to be called alike, counted up
   */
  onKeep: (again: boolean) => Promise<unknown>
  /** Words on the button that keeps and begins the next alike, where there is one. */
  keepAgain?: string
  onAbandon: () => void
  disabled?: boolean
  /** Whether the keyboard begins at the button that keeps, where there is nothing to write. */
  startAtKeep?: boolean
  /** Whether it stays where it is as it comes up: what stands over it is to be seen with it. */
  staysPut?: boolean
}

/**
 * A form that belongs to picks: Enter keeps, Esc cancels. While a stroke is still looked for under them, keeping waits
 * for it: else what is kept would be the rough pick.
 */
export function KeepForm(props: KeepFormProps) {
  const { label, children, keep, keepAgain, onKeep, onAbandon, disabled = false, startAtKeep = false } = props
  const { staysPut = false } = props
  const keeping = useRef(false)
  const form = useRef<HTMLFormElement>(null)
  useInSight(form, !staysPut)
  const looking = useBench(({ picks }) => isLooking(picks))
  const [asked, setAsked] = useState<{ again: boolean } | null>(null)
  const submit = async (again: boolean) => {
    if (keeping.current || disabled) return
    keeping.current = true
    try {
      await onKeep(again)
    } finally {
      keeping.current = false
    }
  }
  useEffect(() => {
    if (asked === null || looking) return
    setAsked(null)
    void submit(asked.again)
  })
  const ask = (again: boolean): void => {
    if (looking) setAsked({ again })
    else void submit(again)
  }
  return (
    <form
      ref={form}
      className="keep-form"
      aria-label={label}
      onSubmit={(event) => {
        event.preventDefault()
        ask(false)
      }}
      onKeyDown={(event) => {
        if (event.key === 'Enter' && event.shiftKey && keepAgain !== undefined && !event.defaultPrevented) {
          event.preventDefault()
          ask(true)
          return
        }
        if (event.key !== 'Escape' || event.defaultPrevented) return
        event.preventDefault()
        onAbandon()
      }}
    >
      {children}
      {asked !== null && (
        <p className="block-soft" role="status">
          It is kept as soon as the stroke has been looked for.
        </p>
      )}
      <div className="keep-form-foot">
        <Button type="submit" kind="main" disabled={disabled} autoFocus={startAtKeep}>
          {keep}
        </Button>
        {keepAgain !== undefined && (
          <Button
            disabled={disabled}
            hint="The next one is called alike, its number counted up. Key: Shift+Enter."
            onPress={() => ask(true)}
          >
            {keepAgain}
          </Button>
        )}
        <Button onPress={onAbandon}>Cancel</Button>
      </div>
    </form>
  )
}
