import { useEffect } from 'react'
import { focusIn } from './focus-in.ts'

const nobodyHas = (): boolean => document.activeElement === null || document.activeElement === document.body

/** Whether an element is on the page and can have the keyboard. */
const canHave = (element: Element): boolean => element.isConnected && !element.matches(':disabled')

/**
 * Keeps the keyboard near where it was when what had it goes (a notice that is put away, a form that is kept, a button
 * that can't be pressed any more), so that nobody begins at the top of the window again. Whoever wants it elsewhere
 * moves it there at once, and nothing is done then.
 */
export function useKeptFocus(): void {
  useEffect(() => {
    const window = document.getElementById('window')
    if (window === null) return
    /** What had the keyboard last within the window, and all that it lies in, the nearest first. */
    let last: Element[] = []
    let waiting = 0

    const taken = ({ target }: FocusEvent): void => {
      if (!(target instanceof Element) || !window.contains(target)) return
      last = [target]
      for (let at = target.parentElement; at !== null && at !== window.parentElement; at = at.parentElement) {
        last.push(at)
      }
    }
    const left = ({ target, relatedTarget }: FocusEvent): void => {
      if (relatedTarget !== null || target !== last[0]) return
      // Somebody pressed where nothing takes the keyboard: they want it nowhere.
      queueMicrotask(() => {
        if (nobodyHas() && last[0] !== undefined && canHave(last[0])) last = []
      })
    }
    const restore = (): void => {
      const [element, ...around] = last
      if (element === undefined || !nobodyHas()) return
      if (canHave(element) && element instanceof HTMLElement) element.focus()
      else around.some((part) => part.isConnected && focusIn(part))
    }
    const changed = new MutationObserver(() => {
      if (!nobodyHas() || waiting !== 0) return
      // Not before whoever closes something has had the time to say where the keyboard goes.
      waiting = requestAnimationFrame(() => {
        waiting = requestAnimationFrame(() => {
          waiting = 0
          restore()
        })
      })
    })
    document.addEventListener('focusin', taken)
    document.addEventListener('focusout', left)
    changed.observe(document.body, {
      childList: true,
      subtree: true,
      attributes: true,
      attributeFilter: ['disabled'],
    })
    return () => {
      document.removeEventListener('focusin', taken)
      document.removeEventListener('focusout', left)
      changed.disconnect()
      cancelAnimationFrame(waiting)
    }
  }, [])
}
