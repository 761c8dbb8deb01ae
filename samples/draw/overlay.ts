import type { Pixel } from '../../src/core/geometry/frames.ts'
import { letter } from './lettering.ts'
import { add, lerp, type Pt, quarter, sub, times, unit } from './plane.ts'

/** Part of the scan, and how much larger or smaller it is shown. */
export interface Crop {
  left: number
  top: number
  width: number
  height: number
  zoom: number
}

export const TINT = { reference: '#1f4f8f', doubt: '#a3162a', pick: '#a3162a', paper: '#fbf7ea' } as const

/** Draws over a crop of the scan in SVG; positions are in pixels of the scan, widths in pixels of the picture. */
export function overlay(crop: Crop) {
  const parts: string[] = []
  const place = ([x, y]: Pt): Pt => [(x - crop.left) * crop.zoom, (y - crop.top) * crop.zoom]
  const path = (points: readonly Pt[], colour: string, width: number, more = '') => {
    const d = points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('')
    parts.push(
      `<path d="${d}" fill="none" stroke="${colour}" stroke-width="${width}" stroke-linecap="round" stroke-linejoin="round" ${more}/>`,
    )
  }
  const arrow = (tip: Pt, towards: Pt, colour: string) => {
    const back = times(unit(towards), -17)
    const side = times(quarter(unit(towards)), 3.4)
    const corners = [tip, add(add(tip, back), side), sub(add(tip, back), side)]
    parts.push(`<polygon points="${corners.map((p) => p.join(',')).join(' ')}" fill="${colour}"/>`)
  }
  const draw = {
    line(a: Pt, b: Pt, colour: string, width = 2, dashed = false) {
      path([place(a), place(b)], colour, width, dashed ? 'stroke-dasharray="9 7"' : '')
    },
    outline(points: readonly Pixel[], colour: string) {
      const first = points[0]
      if (first !== undefined) path([...points, first].map(place), colour, 2, 'stroke-dasharray="14 6 3 6"')
    },
    cross(at: Pt, colour: string, size = 9, width = 1.8) {
      const [x, y] = place(at)
      path(
        [
          [x - size, y],
          [x + size, y],
        ],
        colour,
        width,
      )
      path(
        [
          [x, y - size],
          [x, y + size],
        ],
        colour,
        width,
      )
    },
    /** A label with its middle at a place, on a slip of paper. */
    label(at: Pt, text: string, colour: string, height = 17) {
      slip(place(at), text, colour, height)
    },
    /** A dimension line with witness lines, beside two points; offset in pixels of the picture. */
    dimension(a: Pt, b: Pt, offset: number, text: string, colour: string) {
      const [p, q] = [place(a), place(b)]
      const d = unit(sub(q, p))
      const away = times(quarter(d), offset)
      const past = times(quarter(d), offset + 8 * Math.sign(offset))
      path([p, add(p, past)], colour, 1.6)
      path([q, add(q, past)], colour, 1.6)
      const [from, to] = [add(p, away), add(q, away)]
      path([from, to], colour, 2, 'stroke-dasharray="12 6"')
      arrow(from, times(d, -1), colour)
      arrow(to, d, colour)
      slip(lerp(from, to, 0.5), text, colour, 20)
    },
    svg(): Buffer {
      const [w, h] = [Math.round(crop.width * crop.zoom), Math.round(crop.height * crop.zoom)]
      return Buffer.from(
        `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}">${parts.join('\n')}</svg>`,
      )
    },
  }
  return draw

  function slip([x, y]: Pt, text: string, colour: string, height: number): void {
    const set = letter(text, height)
    const [w, up, down] = [set.width + height * 1.1, set.above + height * 0.35, set.below + height * 0.35]
    parts.push(
      `<rect x="${(x - w / 2).toFixed(1)}" y="${(y - up).toFixed(1)}" width="${w.toFixed(1)}" height="${(up + down).toFixed(1)}" fill="${TINT.paper}" fill-opacity="0.92"/>`,
    )
    for (const stroke of set.strokes) {
      const points = stroke.map(([sx, sy]): Pt => [x - set.width / 2 + sx, y - sy])
      path(points, colour, height / 9)
    }
  }
}
