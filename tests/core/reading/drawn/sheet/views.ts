import { planned } from '../figure-parts.ts'
import type { Board, Place } from './board.ts'
import { drawCallOut } from './call-out.ts'
import { drawDimension } from './dimension.ts'
import { hatch } from './hatching.ts'
import { sizeText } from './sizes.ts'

/** Where a view may be: [x, y, width, height], its dimensions outside of it. */
export type ViewRoom = readonly [number, number, number, number]

const diameter = (board: Board, radius: number, drilled: boolean): string => {
  const written = sizeText(2 * radius, board.ways, board.d)
  if (drilled) return `DRILL ${written}`
  return board.d.happens(0.5) ? `Ø ${written}` : `${written} DIA.`
}

/** A plate with holes in a row and a slot's width of edge: sizes along two sides, a chain of pitches, a call-out. */
export function plate(board: Board, [x, y, w, h]: ViewRoom): void {
  const { d, ways } = board
  const q = ways.height
  board.outline([
    [x, y],
    [x + w, y],
    [x + w, y + h],
    [x, y + h],
  ])
  const holes = d.whole(2, 5)
  const radius = Math.min(h / 8, w / holes / 5) * d.between(0.6, 1)
  const level = y + h * d.between(0.35, 0.65)
  const centres = Array.from({ length: holes }, (_, i): Place => [x + (w * (i + 0.5)) / holes, level])
  for (const [cx, cy] of centres) {
    board.circle([cx, cy], radius)
    board.centreLine([cx, cy - 2 * radius], [cx, cy + 2 * radius])
  }
  board.centreLine([x - q, level], [x + w + q, level])
  drawDimension(board, [x, y + h], [x + w, y + h], d.between(4.6, 6) * q)
  for (let i = 0; i + 1 < holes; i++) {
    const [a, b] = [centres[i], centres[i + 1]]
    if (a && b) drawDimension(board, [a[0], y + h], [b[0], y + h], 2.2 * q, true)
  }
  drawDimension(board, [x, y], [x, y + h], d.between(2.2, 3.4) * q)
  drawDimension(board, [x + w, y + h], [x + w, level], d.between(2, 3) * q)
  const last = centres.at(d.whole(0, holes - 1)) ?? centres[0]
  const callOut = `${holes} HOLES\n${diameter(board, radius, true)}`
  if (last) {
    const out = d.pick([-55, -65, -120])
    const reach = (level - y + 3.2 * q) / Math.sin((-out * Math.PI) / 180)
    drawCallOut(board, last, out, reach, planned(callOut, ways.unit))
  }
}

/** A flanged ring from above: circles about one centre, holes on a pitch circle, an angle, diameters and a radius. */
export function ring(board: Board, [x, y, w, h]: ViewRoom): void {
  const { d, ways } = board
  const q = ways.height
  const c: Place = [x + w / 2, y + h / 2]
  const outer = Math.min(w, h) / 2
  const [pitch, inner] = [outer * d.between(0.76, 0.84), outer * d.between(0.4, 0.6)]
  board.circle(c, outer)
  board.circle(c, inner)
  board.context.setLineDash([2 * q, 0.3 * q, 0.4 * q, 0.3 * q])
  board.circle(c, pitch, 0.45)
  board.context.setLineDash([])
  board.centreLine([c[0] - outer - q, c[1]], [c[0] + outer + q, c[1]])
  board.centreLine([c[0], c[1] - outer - q], [c[0], c[1] + outer + q])
  const holes = d.pick([4, 6, 8] as const)
  const radius = outer * 0.06
  const start = d.between(0.1, 0.6)
  const on = (turn: number, r: number): Place => [c[0] + Math.cos(turn) * r, c[1] + Math.sin(turn) * r]
  for (let i = 0; i < holes; i++) board.circle(on(start + (2 * Math.PI * i) / holes, pitch), radius)
  drawDimension(board, [c[0] - outer, c[1] + outer], [c[0] + outer, c[1] + outer], 2.4 * q)
  drawDimension(board, [c[0] + outer, c[1] + inner], [c[0] + outer, c[1] - inner], 2.6 * q)
  const { unit } = ways
  const callOut = planned(`${holes} HOLES ${diameter(board, radius, true)}`, unit)
  drawCallOut(board, on(start - (2 * Math.PI) / holes, pitch + radius), -40, 4 * q, callOut)
  drawCallOut(board, on(-2.3, outer), -140, 3 * q, planned(`R ${sizeText(outer, ways, d)}`, unit))
  drawCallOut(board, on(2.4, inner), 145, outer, planned(diameter(board, inner, false), unit))
  const degrees = Math.round((start * 180) / Math.PI)
  const set = board.set(planned(`${degrees}°`, unit))
  const far: Place = [c[0] + outer + 4 * q + set.right, c[1] + Math.tan(start / 2) * (outer + 5 * q)]
  const place = board.room(set, far, 0)
  if (place) board.figure(planned(`${degrees}°`, unit), place)
  board.line(c, on(start, outer + 6 * q), 0.45)
}

/** A gusset with a sloping side, of which the length is figured along it. */
export function gusset(board: Board, [x, y, w, h]: ViewRoom): void {
  const { d, ways } = board
  const q = ways.height
  const [toe, top] = [h * d.between(0.15, 0.35), w * d.between(0.15, 0.4)]
  const points: readonly Place[] = [
    [x, y + h],
    [x, y],
    [x + top, y],
    [x + w, y + h - toe],
    [x + w, y + h],
  ]
  board.outline(points)
  const [, corner, shoulder, foot, end] = points as readonly [Place, Place, Place, Place, Place]
  drawDimension(board, shoulder, foot, -2.4 * q)
  drawDimension(board, corner, [x, y + h], 2.6 * q)
  drawDimension(board, [x, y + h], end, 2.6 * q)
  drawDimension(board, corner, shoulder, -2 * q)
  drawDimension(board, foot, end, -2.4 * q)
  const hole: Place = [x + w * 0.3, y + h * 0.62]
  board.circle(hole, q * 0.9)
  board.centreLine([hole[0] - 3 * q, hole[1]], [hole[0] + 3 * q, hole[1]])
  board.centreLine([hole[0], hole[1] - 3 * q], [hole[0], hole[1] + 3 * q])
  drawCallOut(
    board,
    [hole[0] + 0.9 * q, hole[1]],
    20,
    2.5 * q,
    planned(diameter(board, 0.9 * q, true), ways.unit),
  )
  const gauge = planned(`No. ${d.whole(8, 22)} GA`, ways.unit)
  const set = board.set(gauge)
  const place = board.room(set, [x + w * 0.45, y + h * 0.86], 0)
  if (place) board.figure(gauge, place)
}

/** A stepped spindle in half section: steps along it, diameters across, hatching where it is cut. */
export function spindle(board: Board, [x, y, w, h]: ViewRoom): void {
  const { d, ways } = board
  const q = ways.height
  const axis = y + h / 2
  const steps = d.whole(2, 4)
  let from = x
  for (let i = 0; i < steps; i++) {
    const to = i + 1 === steps ? x + w : from + (w / steps) * d.between(0.7, 1.1)
    const half = (h / 2) * d.between(0.35, 1)
    board.outline([
      [from, axis - half],
      [to, axis - half],
      [to, axis + half],
      [from, axis + half],
    ])
    if (d.happens(0.6)) {
      const cut: Place[] = [
        [from, axis - half],
        [to, axis - half],
        [to, axis - half * 0.3],
        [from, axis - half * 0.3],
      ]
      board.line([from, axis - half * 0.3], [to, axis - half * 0.3])
      hatch(board, cut, d.pick([45, -45]), q * d.between(0.4, 0.7))
    }
    drawDimension(board, [from, y + h], [to, y + h], 2.4 * q, true)
    const callOut = planned(diameter(board, half, false), ways.unit)
    drawCallOut(board, [(from + to) / 2, axis - half], -60, h / 2 - half + d.between(2.5, 4) * q, callOut)
    from = to
  }
  board.centreLine([x - 2 * q, axis], [x + w + 2 * q, axis])
  drawDimension(board, [x, y + h], [x + w, y + h], 5.2 * q)
}

export const VIEWS = [plate, ring, gusset, spindle] as const
