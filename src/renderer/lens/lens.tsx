import './lens.css'
import { useEffect, useRef } from 'react'
import { useBench } from '../bench/bench-store.ts'
import { cameras } from '../camera/camera-store.ts'
import { useHowToPick } from '../picking/how-to-pick.ts'
import { pointer } from '../picking/pointer-store.ts'
import { underPointer } from '../strokes/under-pointer.ts'
import { watchPointer } from '../strokes/watch-pointer.ts'
import { pictureLoader, RANK } from '../tiles/the-pictures.ts'
import { drawLens, type LensParts } from './draw-lens.ts'

/** The neighbourhood of the pointer enlarged, while something is being picked. Drawn without React. */
export function Lens() {
  const frame = useRef<HTMLDivElement>(null)
  const picture = useRef<HTMLCanvasElement>(null)
  const lines = useRef<HTMLCanvasElement>(null)
  const section = useRef<HTMLCanvasElement>(null)
  const place = useRef<HTMLSpanElement>(null)
  const sigma = useRef<HTMLSpanElement>(null)
  const note = useRef<HTMLSpanElement>(null)
  const picking = useBench((bench) => bench.picks.tool.kind !== 'look')

  useEffect(() => {
    const parts = {
      frame: frame.current,
      picture: picture.current,
      lines: lines.current,
      section: section.current,
      place: place.current,
      sigma: sigma.current,
      note: note.current,
    }
    if (!picking || !areThere(parts)) return
    let due = 0
    const ask = (): void => {
      if (due !== 0) return
      due = requestAnimationFrame(() => {
        due = 0
        drawLens(parts)
      })
    }
    ask()
    const endings = [
      pointer.subscribe(ask),
      cameras.subscribe(ask),
      pictureLoader.listen((_, form) => {
        if (form === 'bitmap') ask()
      }),
      useBench.subscribe(ask),
      useHowToPick.subscribe(ask),
      underPointer.subscribe(ask),
      watchPointer(),
    ]
    return () => {
      cancelAnimationFrame(due)
      pictureLoader.want('lens', RANK.lens, 'bitmap', [])
      parts.frame.hidden = true
      for (const end of endings) end()
    }
  }, [picking])

  return (
    <div className="lens" ref={frame} hidden aria-hidden="true">
      <div className="lens-glass">
        <canvas className="lens-picture" ref={picture} />
        <canvas className="lens-lines" ref={lines} />
      </div>
      <canvas className="lens-section" ref={section} />
      <div className="lens-words">
        <span ref={place} />
        <span ref={sigma} />
        <span className="lens-note" ref={note} />
      </div>
    </div>
  )
}

const areThere = (parts: { [K in keyof LensParts]: LensParts[K] | null }): parts is LensParts =>
  Object.values(parts).every((part) => part !== null)
