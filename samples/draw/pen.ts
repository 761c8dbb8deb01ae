import type { Chance } from './chance.ts'
import type { Stroke } from './drawing-board.ts'
import { add, lengthOf, lerp, type Pt, quarter, sub, times, unit } from './plane.ts'
import { toPixel } from './sheet-distortion.ts'

/** How far a pen strays from its ruler, and a hand from its letters, mm. */
const STRAY = { ruled: 0.025, freehand: 0.05 }
const STEP = 1.3

/** A stroke as the pen truly ran, mm on paper: never quite straight, never quite the same twice. */
export function inked(stroke: Stroke, chance: Chance): Pt[] {
  if (stroke.filled) return stroke.points
  const points = subdivided(stroke.points)
  const stray = stroke.freehand ? STRAY.freehand : STRAY.ruled
  const shift: Pt = stroke.freehand ? [0.03 * chance.normal(), 0.03 * chance.normal()] : [0, 0]
  let drift = stray * chance.normal()
  return points.map((p, i) => {
    // A first-order autoregression keeps the stray smooth along the stroke and its spread the same everywhere.
    drift = 0.8 * drift + 0.6 * stray * chance.normal()
    const before = points[Math.max(0, i - 1)] ?? p
    const after = points[Math.min(points.length - 1, i + 1)] ?? p
    const along = sub(after, before)
    if (lengthOf(along) === 0) return add(p, shift)
    return add(add(p, shift), times(quarter(unit(along)), drift))
  })
}

function subdivided(points: readonly Pt[]): Pt[] {
  const out: Pt[] = []
  points.forEach((p, i) => {
    const q = points[i + 1]
    if (q === undefined) {
      out.push(p)
      return
    }
    const n = Math.max(1, Math.ceil(lengthOf(sub(q, p)) / STEP))
    for (let k = 0; k < n; k++) out.push(lerp(p, q, k / n))
  })
  return out
}

/** One stroke as an SVG path in pixels of the scan. */
export function svgPath(stroke: Stroke, chance: Chance): string {
  const points = inked(stroke, chance).map((p) => toPixel(p))
  const d = points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(2)} ${y.toFixed(2)}`).join('')
  const strength = Math.min(1, 0.9 + 0.06 * chance.normal()).toFixed(2)
  if (stroke.filled) return `<path d="${d}Z" fill="#000" stroke="none" fill-opacity="${strength}"/>`
  const width = (stroke.width * (300 / 25.4) * (1 + 0.05 * chance.normal())).toFixed(2)
  return `<path d="${d}" stroke-width="${width}" stroke-opacity="${strength}"/>`
}
