import type { Pixel } from '../../core/geometry/frames.ts'
import type { FoundStroke } from '../../core/imaging/index.ts'
import type { LensInks } from './lens-lines.ts'
import { LENS_PIXELS, LENS_ZOOM, turnAboutMiddle } from './lens-picture.ts'

type Context = CanvasRenderingContext2D

const GLASS = LENS_PIXELS * LENS_ZOOM
/** A line through the lens is longer than the lens, pixels of the scan. */
const LONG = 2 * LENS_PIXELS
const RING = 5

/** Draws over the lens the stroke that a pick would take: along its middle or edge, and where the pick would lie. */
export function drawLensStroke(
  context: Context,
  found: FoundStroke,
  middle: Pixel,
  hold: { quarters: number; mirror: boolean },
  inks: LensInks,
): void {
  context.save()
  context.beginPath()
  context.rect(1, 1, GLASS - 2, GLASS - 2)
  context.clip()
  turnAboutMiddle(context, hold, GLASS)
  const at = (x: number, y: number): [number, number] => [
    GLASS / 2 + (x - middle[0]) * LENS_ZOOM,
    GLASS / 2 + (y - middle[1]) * LENS_ZOOM,
  ]
  const pens = [
    { style: inks.ground, width: 3, alpha: 0.6 },
    { style: inks.cross, width: 1.25, alpha: 1 },
  ]
  for (const { style, width, alpha } of pens) {
    context.strokeStyle = style
    context.lineWidth = width
    context.globalAlpha = alpha
    context.setLineDash([10, 3, 2, 3])
    for (const {
      at: [x, y],
      direction,
    } of waysOf(found)) {
      const [dx, dy] = [LONG * Math.cos(direction), LONG * Math.sin(direction)]
      context.beginPath()
      context.moveTo(...at(x - dx, y - dy))
      context.lineTo(...at(x + dx, y + dy))
      context.stroke()
    }
    context.setLineDash([])
    const place = placeFound(found)
    if (place === null) continue
    context.beginPath()
    context.arc(...at(place[0], place[1]), RING, 0, 2 * Math.PI)
    context.stroke()
  }
  context.restore()
}

/** Ways of the strokes that were found, as the lens draws them: a place on each and its direction, radians. */
function waysOf(found: FoundStroke): { at: Pixel; direction: number }[] {
  switch (found.kind) {
    case 'point':
      return [{ at: found.pixel, direction: found.direction }]
    case 'crossing':
      return found.directions.map((direction) => ({ at: found.pixel, direction }))
    default:
      return []
  }
}

/** Where a pick would lie; null for what is none. */
const placeFound = (found: FoundStroke): Pixel | null =>
  found.kind === 'point' || found.kind === 'crossing' ? found.pixel : null
