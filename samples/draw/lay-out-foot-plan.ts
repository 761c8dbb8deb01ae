import { dimensionLine, leader, levelDimension } from './dimension-line.ts'
import type { DrawnView } from './draughtsman.ts'
import { type Board, centreCircle, centreLine, circle, line, PEN, words } from './drawing-board.ts'
import { add, type Pt, polar, sub, times, unit } from './plane.ts'
import { PRINTED } from './printed-figures.ts'

export function layOutFootPlan(board: Board, v: DrawnView): void {
  outlines(board, v)
  centres(board, v)
  figures(board, v)
  const [x] = v.plan.origin
  words(board, [x, 7.98 * 25.4], 'PLAN OF FOOT FLANGE', { height: 4, width: PEN.title })
  words(board, [x, 8.24 * 25.4], `SCALE 6" = 1'-0"`, { height: 2.8 })
}

function outlines(board: Board, v: DrawnView): void {
  for (const name of ['rim', 'bore']) circle(board, v.ring(name).c, v.ring(name).r)
  const wall = v.ring('drumWall')
  const sheet = 0.0625 * 25.4 * v.plan.trueScale
  circle(board, wall.c, wall.r)
  circle(board, wall.c, wall.r - sheet, PEN.thin)
  for (let i = 1; i <= 8; i++) circle(board, v.ring(`hole${i}`).c, v.ring(`hole${i}`).r)
  for (const name of ['barLeft', 'barRight']) line(board, v.edge(name).a, v.edge(name).b)
}

function centres(board: Board, v: DrawnView): void {
  centreCircle(board, v.ring('boltCircle').c, v.ring('boltCircle').r)
  const reach = 4.6
  for (const name of ['axisAcross', 'axisUp']) {
    const { a, b } = v.edge(name)
    const d = unit(sub(b, a))
    const past = v.ring('rim').r - v.ring('boltCircle').r + 5
    const inner = times(d, reach)
    centreLine(board, add(a, inner), sub(b, inner))
    line(board, sub(a, times(d, past)), add(a, inner), PEN.thin)
    line(board, sub(b, inner), add(b, times(d, past)), PEN.thin)
  }
  for (const [axis, tick] of [
    ['axisAcross', 'tick1'],
    ['axisUp', 'tick3'],
    ['axisAcross', 'tick5'],
    ['axisUp', 'tick7'],
  ] as const) {
    const p = v.corner(axis, tick)
    const { a, b } = v.edge(tick)
    const d = times(unit(sub(b, a)), reach)
    line(board, sub(p, d), add(p, d), PEN.thin)
  }
  for (const i of [2, 4, 6, 8]) {
    const { a, b } = v.edge(`radial${i}`)
    line(board, a, b, PEN.thin)
  }
}

function figures(board: Board, v: DrawnView): void {
  const rim = v.ring('rim')
  const pitch = v.ring('boltCircle')
  const ends = [polar(rim.c, rim.r, Math.PI), polar(rim.c, rim.r, 0)] as const
  levelDimension(
    board,
    add(ends[0], [0, 5]),
    add(ends[1], [0, 5]),
    7.62 * 25.4,
    PRINTED['foot-plan/flange_od'],
    { figure: 'foot-plan/flange_od', at: 0.44 },
  )
  const slope = -Math.PI / 8
  dimensionLine(
    board,
    polar(pitch.c, pitch.r, slope + Math.PI),
    polar(pitch.c, pitch.r, slope),
    PRINTED['foot-plan/bolt_circle'],
    { figure: 'foot-plan/bolt_circle', at: 0.3 },
  )
  const side = (-3 * Math.PI) / 8
  dimensionLine(
    board,
    polar(pitch.c, pitch.r, side),
    polar(rim.c, rim.r, side),
    PRINTED['foot-plan/edge_margin'],
    { figure: 'foot-plan/edge_margin', outside: 'beyond-b', height: 2.7 },
  )
  holeNote(board, v)
}

function holeNote(board: Board, v: DrawnView): void {
  const hole = v.ring('hole2')
  const end: Pt = [12.2 * 25.4, 1.5 * 25.4]
  leader(board, polar(hole.c, hole.r, -Math.PI / 3), add(end, [-3, 0]), end)
  const from = add(end, [1.4, 0])
  words(board, from, PRINTED['foot-plan/hole_count'], {
    height: 2.8,
    anchor: 'start',
    figure: 'foot-plan/hole_count',
  })
  words(board, add(from, [0, 6.2]), PRINTED['foot-plan/hole_dia'], {
    height: 2.8,
    anchor: 'start',
    figure: 'foot-plan/hole_dia',
  })
}
