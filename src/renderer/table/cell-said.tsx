import { type ReactNode, type RefObject, useLayoutEffect, useRef } from 'react'
import { createPortal } from 'react-dom'

interface CellSaidProps {
  /** The field that it is said of. */
  of: RefObject<HTMLElement | null>
  children: ReactNode
}

/** Pixels between it and the edge of the window. */
const GAP = 4

/** What is said of a field in a cell: under it, or above it where there is no room, whole also where the table is low. */
export function CellSaid({ of, children }: CellSaidProps) {
  const box = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => {
    const said = box.current
    if (said === null) return
    const place = (): void => {
      const cell = of.current?.getBoundingClientRect()
      if (cell === undefined) return
      const { width, height } = said.getBoundingClientRect()
      const isBelow = window.innerHeight - cell.bottom >= height + GAP
      const left = Math.max(GAP, Math.min(cell.left, window.innerWidth - width - GAP))
      said.style.transform = `translate(${left}px, ${isBelow ? cell.bottom : cell.top - height}px)`
    }
    place()
    const resized = new ResizeObserver(place)
    resized.observe(said)
    window.addEventListener('resize', place)
    window.addEventListener('scroll', place, { capture: true, passive: true })
    return () => {
      resized.disconnect()
      window.removeEventListener('resize', place)
      window.removeEventListener('scroll', place, { capture: true })
    }
  }, [of])
  return createPortal(
    <div ref={box} className="cell-editor-said">
      {children}
    </div>,
    document.body,
  )
}
