import type { KeyboardEvent, PointerEvent } from 'react'

interface DividerProps {
  /** Share of the whole that is below it, per cent. */
  share: number
  least: number
  most: number
  onMove: (share: number) => void
}

const STEP = 2

/** The rule between sheet and table; dragged, or moved by the arrow keys. */
export function Divider({ share, least, most, onMove }: DividerProps) {
  const dragged = (event: PointerEvent<HTMLElement>): void => {
    const box = event.currentTarget.parentElement?.getBoundingClientRect()
    if (!event.currentTarget.hasPointerCapture(event.pointerId) || box === undefined) return
    onMove((100 * (box.bottom - event.clientY)) / box.height)
  }
  const pressed = (event: KeyboardEvent): void => {
    const to: Record<string, number> = {
      ArrowUp: share + STEP,
      ArrowDown: share - STEP,
      PageUp: share + 5 * STEP,
      PageDown: share - 5 * STEP,
      Home: least,
      End: most,
    }
    const next = to[event.key]
    if (next === undefined) return
    event.preventDefault()
    onMove(next)
  }
  return (
    // biome-ignore lint/a11y/useSemanticElements: a rule that is moved is a separator, and hr can't be focused
    <div
      className="divider"
      role="separator"
      tabIndex={0}
      aria-label="Height of the table"
      aria-orientation="horizontal"
      aria-controls="the-table"
      aria-valuemin={least}
      aria-valuemax={most}
      aria-valuenow={Math.round(share)}
      aria-valuetext={`${Math.round(share)} per cent`}
      onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
      onPointerMove={dragged}
      onKeyDown={pressed}
    />
  )
}
