import './lens.css'
import { useEffect, useRef } from 'react'
import { aidsOf, useBench } from '../bench/bench-store.ts'
import { HAND_SIGMA } from '../picking/picks.ts'
import { toScreen } from './camera.ts'
import { cameraOf, cameras } from './camera-store.ts'
import { drawLensLines, LENS_SIZE, type LensInks } from './lens-lines.ts'
import {
  drawFrom,
  finestThere,
  LENS_PIXELS,
  LENS_ZOOM,
  lensExtent,
  lensTurn,
  profilesAt,
  tilesOver,
  turnAboutMiddle,
} from './lens-picture.ts'
import { inksFor } from './overlay/inks.ts'
import { pickQuality } from './pick-quality.ts'
import { placeInWords } from './pick-words.ts'
import { pointer } from './pointer-store.ts'
import { isShownDark, overviewAddress, tileAddress } from './tiles/draw-sheet.ts'
import { isDark } from './tiles/is-dark.ts'
import { pictureCache, pictureLoader, RANK } from './tiles/the-pictures.ts'

const GLASS = LENS_PIXELS * LENS_ZOOM
/** The lens goes to the other side when the pointer comes so near to it, CSS pixels. */
const NEAR = 60

/** The neighbourhood of the pointer enlarged, while something is being picked. Drawn without React. */
export function Lens() {
  const frame = useRef<HTMLDivElement>(null)
  const picture = useRef<HTMLCanvasElement>(null)
  const lines = useRef<HTMLCanvasElement>(null)
  const place = useRef<HTMLSpanElement>(null)
  const sigma = useRef<HTMLSpanElement>(null)
  const note = useRef<HTMLSpanElement>(null)
  const picking = useBench((bench) => bench.picks.tool.kind !== 'look')

  useEffect(() => {
    const parts = {
      frame: frame.current,
      picture: picture.current,
      lines: lines.current,
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
      pictureLoader.listen(ask),
      useBench.subscribe(ask),
    ]
    return () => {
      cancelAnimationFrame(due)
      pictureLoader.want('lens', RANK.lens, [])
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
      <div className="lens-words">
        <span ref={place} />
        <span ref={sigma} />
        <span className="lens-note" ref={note} />
      </div>
    </div>
  )
}

interface Parts {
  frame: HTMLDivElement
  picture: HTMLCanvasElement
  lines: HTMLCanvasElement
  place: HTMLSpanElement
  sigma: HTMLSpanElement
  note: HTMLSpanElement
}

const areThere = (parts: { [K in keyof Parts]: Parts[K] | null }): parts is Parts =>
  Object.values(parts).every((part) => part !== null)

function drawLens(parts: Parts): void {
  const bench = useBench.getState()
  const { pixel } = pointer.getState()
  const pictures = bench.sheet === null ? undefined : bench.pictures[bench.sheet]
  const camera = cameraOf(bench.sheet)
  const onSheet =
    pixel !== null &&
    pictures !== undefined &&
    pixel[0] >= 0 &&
    pixel[1] >= 0 &&
    pixel[0] <= pictures.width &&
    pixel[1] <= pictures.height
  parts.frame.hidden = !onSheet || camera === undefined
  if (!onSheet || camera === undefined) {
    pictureLoader.want('lens', RANK.lens, [])
    return
  }
  keepAside(parts.frame, toScreen(camera, cameras.getState().box, pixel)[0])
  const shown = lensExtent(pixel)
  if (pictures.progress.state === 'ready') {
    const addresses = tilesOver(shown, 0, pictures).map((tile) => tileAddress(pictures, tile))
    pictureLoader.want('lens', RANK.lens, addresses)
  }
  const level = finestThere(shown, pictures, pictureCache)
  const hold = lensTurn(camera)
  const density = window.devicePixelRatio || 1
  const glass = contextOf(parts.picture, GLASS, density)
  if (glass !== null) {
    glass.clearRect(0, 0, GLASS, GLASS)
    glass.imageSmoothingEnabled = false
    turnAboutMiddle(glass, hold, GLASS)
    glass.scale(LENS_ZOOM, LENS_ZOOM)
    glass.translate(LENS_PIXELS / 2 - pixel[0], LENS_PIXELS / 2 - pixel[1])
    drawFrom(glass, shown, level, pictures, pictureCache)
  }
  const profiles = profilesAt(pixel, hold, (to) => drawFrom(to, shown, level, pictures, pictureCache))
  const aids = aidsOf(bench, bench.sheet)
  const address = overviewAddress(pictures)
  const dark = isShownDark(isDark(address, pictureCache.get(address)), aids)
  const contrast = aids.contrast === 1 ? '' : ` contrast(${aids.contrast})`
  parts.picture.style.filter = `${aids.negative ? 'invert(1)' : ''}${contrast}`.trim()
  const above = contextOf(parts.lines, LENS_SIZE, density)
  if (above !== null) drawLensLines(above, profiles, lensInks(dark))
  const { how, sigma } = pickQuality(pointer.getState().by, camera.zoom, pictures)
  parts.place.textContent = placeInWords(pixel)
  parts.sigma.textContent = `${how}, σ ${sigma.toFixed(1)} px`
  parts.note.textContent =
    level !== 0
      ? coarseNote(level, pictures.width, address)
      : sigma > HAND_SIGMA
        ? 'go closer to pick finer'
        : ''
}

function coarseNote(level: number | null, width: number, overview: string): string {
  if (level !== null) return `one pixel here is ${2 ** level} of the scan`
  const there = pictureCache.get(overview)
  return there === undefined
    ? 'the picture is on its way'
    : `one pixel here is ${Math.max(1, Math.round(width / there.width))} of the scan`
}

/** The side that the pointer is not on; it changes only when the pointer comes near. */
function keepAside(frame: HTMLElement, x: number): void {
  const width = cameras.getState().box.width
  const reach = LENS_SIZE + NEAR
  if (x < reach) frame.dataset['side'] = 'right'
  else if (x > width - reach) delete frame.dataset['side']
}

function contextOf(
  canvas: HTMLCanvasElement,
  size: number,
  density: number,
): CanvasRenderingContext2D | null {
  const device = Math.round(size * density)
  if (canvas.width !== device) {
    canvas.width = device
    canvas.height = device
  }
  const context = canvas.getContext('2d')
  context?.setTransform(density, 0, 0, density, 0, 0)
  return context
}

function lensInks(dark: boolean): LensInks {
  const style = getComputedStyle(document.documentElement)
  const token = (name: string): string => style.getPropertyValue(`--${name}`)
  const over = inksFor(dark)
  return {
    ink: token('ink'),
    soft: token('rule-strong'),
    act: token('prussian'),
    cross: over.ink,
    ground: over.ground,
  }
}
