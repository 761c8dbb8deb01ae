import { inkOfSvg } from '../drawn/svg-picture.ts'
import { ACROSS, type Dirt, dirtIn, INK, type LargeRing, PAPER } from './large-ring.ts'

/** Side of a window that is drawn at once, pixels. */
export const SVG_SIDE = 256
/** Drawn beyond it, pixels: where it ends the blur would see the same again. */
const MARGIN = 8
/** From one corner of what stands for an arc to the next, pixels: it lies inside of that by a thousandth of a pixel at most. */
const CHORD = 2

/** Grey values of a window of a ring, drawn by librsvg, which knows nothing of how strokes are looked for. */
export async function bySvg(ring: LargeRing, left: number, top: number, side: number): Promise<Float64Array> {
  const all = side + 2 * MARGIN
  const drawing = [
    `<path d="${wayIn(ring, left, top, side)}" fill="none" stroke="black" stroke-width="${ring.width}"/>`,
    ...dirtIn(ring, left, top, side).map(svgOf),
  ].join('')
  const moved = `<g transform="translate(${MARGIN - left} ${MARGIN - top})">${drawing}</g>`
  const ink = await inkOfSvg(moved, all, all, ring.blur)
  return Float64Array.from({ length: side * side }, (_, i) => {
    const [column, row] = [i % side, Math.floor(i / side)]
    return PAPER + (INK - PAPER) * (ink.data[(row + MARGIN) * all + column + MARGIN] ?? 0)
  })
}

/** The part of a ring that passes a window, in corners: a circle that large is drawn too coarsely as one. */
function wayIn({ centre, radius, from, sweep }: LargeRing, left: number, top: number, side: number): string {
  const middle = Math.atan2(top + side / 2 - centre[1], left + side / 2 - centre[0])
  const half = (1.5 * side) / radius
  const count = Math.ceil((2 * half * radius) / CHORD)
  const corners: string[] = []
  for (let i = 0; i <= count; i++) {
    const turns = Math.floor((middle - from) / (2 * Math.PI))
    const angle = middle - 2 * Math.PI * turns + half * ((2 * i) / count - 1)
    const isDrawn = sweep >= 2 * Math.PI || (angle >= from && angle <= from + sweep)
    if (isDrawn)
      corners.push(
        `${(centre[0] + radius * Math.cos(angle)).toFixed(5)} ${(centre[1] + radius * Math.sin(angle)).toFixed(5)}`,
      )
  }
  return corners.length === 0 ? '' : `M${corners.join('L')}`
}

function svgOf(dirt: Dirt): string {
  const [x, y] = dirt.at
  if (dirt.kind === 'stain') {
    const ink = (PAPER - dirt.grey) / (PAPER - INK)
    return `<circle cx="${x}" cy="${y}" r="${dirt.radius}" fill="black" fill-opacity="${Math.min(1, ink)}"/>`
  }
  const [dx, dy] = [-dirt.normal[1] * ACROSS, dirt.normal[0] * ACROSS]
  return `<path d="M${x - dx} ${y - dy}L${x + dx} ${y + dy}" stroke="black" stroke-width="${2 * dirt.half}"/>`
}
