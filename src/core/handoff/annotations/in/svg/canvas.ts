import { numbersIn, svgLength } from './svg-numbers.ts'

/** Where the canvas of a drawing lies and how large it is, in its own units. */
export interface Canvas {
  x: number
  y: number
  width: number
  height: number
}

/** How a canvas is laid over a page: where it begins, in its own units, and pixels of the page in one of them. */
export interface CanvasPlace {
  left: number
  top: number
  across: number
  down: number
}

/** The sides of a canvas and of the page may differ so much in proportion. */
const ALIKE = 0.02
/** No four numbers are longer than this, so that no more of a text is looked through. */
const LONGEST_BOX = 400

/** The canvas that the attributes of an `svg` element state; null when they do not say. */
export function canvasOf(attributes: Readonly<Record<string, string>>): Canvas | null {
  const [x, y, ...size] = numbersIn((attributes['viewBox'] ?? '').slice(0, LONGEST_BOX))
  const boxed = x !== undefined && y !== undefined && size.length > 1
  const [width = 0, height = 0] = boxed
    ? size
    : [attributes['width'], attributes['height']].map((side) => svgLength(side ?? '', Number.NaN))
  if (!(width > 0 && height > 0)) return null
  return boxed ? { x, y, width, height } : { x: 0, y: 0, width, height }
}

/**
 * A canvas over the whole of a page: one of another size is enlarged or reduced to it. Null when it has other
 * proportions. Source: Web Annotation Data Model, section 4.2.7.
 */
export function layOver(canvas: Canvas, page: { width: number; height: number }): CanvasPlace | null {
  const across = page.width / canvas.width
  const down = page.height / canvas.height
  return Math.abs(across / down - 1) > ALIKE ? null : { left: canvas.x, top: canvas.y, across, down }
}
