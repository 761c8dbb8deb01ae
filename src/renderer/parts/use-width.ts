import { type RefObject, useLayoutEffect, useState } from 'react'

/** The width of an element in pixels, as it changes; 0 until it is known. */
export function useWidth(element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0)
  useLayoutEffect(() => {
    const { current } = element
    if (current === null) return
    setWidth(current.clientWidth)
    const watch = new ResizeObserver(() => setWidth(current.clientWidth))
    watch.observe(current)
    return () => watch.disconnect()
  }, [element])
  return width
}
