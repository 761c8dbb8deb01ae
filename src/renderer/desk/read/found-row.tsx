import { type RefObject, useEffect, useRef, useState } from 'react'
import { lineOfFigure } from '../../overlay/found-figure-items.ts'
import type { LineType } from '../../overlay/items.ts'
import { Figure } from '../../parts/figure.tsx'
import type { FigureOnSheet } from '../../reading/found-figures.ts'
import { sureWords } from '../../reading/sure-words.ts'
import { BasisSample } from '../../table/basis-sample.tsx'
import { ScanCrop } from '../../tiles/scan-crop.tsx'
import { withRoom } from './read-figure.tsx'

/** The crop in a row, CSS pixels. */
const CROP = { width: 112, height: 42 }

/** Bases that are drawn with the lines that boxes have. */
const SAMPLES: Partial<Record<LineType, string>> = {
  full: 'printed',
  dashed: 'scaled',
  double: 'found',
  dotted: 'derived',
}

interface FoundRowProps {
  id: string
  sheet: string
  figure: FigureOnSheet
  chosen: boolean
  onChoose: () => void
  /** Double click. */
  onOpen: () => void
}

/** One figure of a sheet: as it stands there, beside what is read. */
export function FoundRow({ id, sheet, figure, chosen, onChoose, onOpen }: FoundRowProps) {
  const row = useRef<HTMLDivElement>(null)
  const seen = useSeen(row)
  const { reading, state } = figure
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the list has the keys
    // biome-ignore lint/a11y/useFocusableInteractive: the list has the keyboard, and says which one is chosen
    <div
      ref={row}
      id={id}
      className="found-row"
      role="option"
      aria-selected={chosen}
      data-state={state}
      onClick={onChoose}
      onDoubleClick={onOpen}
    >
      <span className="found-row-crop" aria-hidden="true">
        {seen && (
          <ScanCrop sheet={sheet} box={withRoom(reading.box)} angle={reading.angle} {...CROP} label="" />
        )}
      </span>
      <span className="found-row-words">
        <span className="found-row-figure">
          {figure.taken !== undefined ? (
            <Figure text={figure.taken.text} />
          ) : reading.text === null ? (
            <span className="found-row-strokes">
              {reading.asRead === '' ? 'nothing read' : `“${reading.asRead}”`}
            </span>
          ) : (
            <Figure text={reading.text} />
          )}
        </span>
        <span className="found-row-state">
          <BasisSample basis={SAMPLES[lineOfFigure(figure)] ?? null} />
          {stateWords(figure)}
        </span>
      </span>
    </div>
  )
}

function stateWords({ state, taken, reading }: FigureOnSheet): string {
  if (taken !== undefined) return `taken: ${taken.label || taken.dimension}`
  return state === 'dismissed' ? 'dismissed' : sureWords(reading)
}

/** Whether something is, or nearly is, in sight: pictures are drawn only where somebody looks. */
function useSeen(what: RefObject<HTMLElement | null>): boolean {
  const [seen, setSeen] = useState(false)
  useEffect(() => {
    if (what.current === null) return
    const observer = new IntersectionObserver(([entry]) => setSeen(entry?.isIntersecting === true), {
      rootMargin: '200px',
    })
    observer.observe(what.current)
    return () => observer.disconnect()
  }, [what])
  return seen
}
