import { useEffect } from 'react'
import { useBench } from '../bench/bench-store.ts'

const FLOOR = 'scantling floor'
const BENCH = 'scantling bench'

/** Told by the page as it is led elsewhere, so that the host waits for it to come back. */
const LEFT = '/left'

/**
 * Keeps Back from leading out of a window: the entry of the page has one under it, and whoever goes down to that is led
 * up again. Nothing on the page changes by it. Where a browser leads elsewhere all the same, the host is told that this
 * was no closing. A page that is closed swaps with no other, and tells nothing (HTML Living Standard, pageswap).
 */
export function useStayHere(): void {
  const isLocal = useBench(({ host }) => host?.host === 'local')
  useEffect(() => {
    if (!isLocal) return
    // At every load: an entry from before it would bring up a page of its own.
    history.replaceState(FLOOR, '')
    history.pushState(BENCH, '')
    const went = ({ state }: PopStateEvent): void => {
      if (state === FLOOR) history.forward()
    }
    const swapped = (): void => {
      navigator.sendBeacon(LEFT)
    }
    window.addEventListener('popstate', went)
    window.addEventListener('pageswap', swapped)
    return () => {
      window.removeEventListener('popstate', went)
      window.removeEventListener('pageswap', swapped)
    }
  }, [isLocal])
}
