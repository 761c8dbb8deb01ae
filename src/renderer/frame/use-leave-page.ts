import { useEffect } from 'react'
import { useBench } from '../bench/bench-store.ts'
import { leaveField } from '../focus/leave-field.ts'
import { isAnyUnkept } from '../parts/unkept.ts'

/** Keeps what is written in a field as the page is left; the browser asks as long as not all of it is kept. */
export function useLeavePage(): void {
  useEffect(() => {
    const leaving = (event: BeforeUnloadEvent): void => {
      // The desktop's own window has no such question: it would not close, and not say why.
      const { host } = useBench.getState()
      leaveField()
      const unkept = useBench.getState().keeping > 0 || isAnyUnkept()
      if (unkept && host?.host === 'local') event.preventDefault()
    }
    window.addEventListener('beforeunload', leaving)
    return () => window.removeEventListener('beforeunload', leaving)
  }, [])
}
