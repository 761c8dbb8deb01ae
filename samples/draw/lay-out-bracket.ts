import { leader, levelDimension, uprightDimension } from './dimension-line.ts'
import type { DrawnView } from './draughtsman.ts'
import { type Board, circle, line, PEN, polyline, words } from './drawing-board.ts'
import { add, lerp, type Pt, polar } from './plane.ts'
import { type FigurePlace, PRINTED } from './printed-figures.ts'

const inch = 25.4

export function layOutBracket(board: Board, v: DrawnView): void {
  side(board, v)
  palm(board, v)
  const x = v.plan.origin[0] + 1.35 * inch
  words(board, [x, 8.18 * inch], 'CAST BRACKET', { height: 4, width: PEN.title })
  words(board, [x, 8.42 * inch], `SCALE 6" = 1'-0"`, { height: 2.8 })
}

const figure = (id: FigurePlace) => [PRINTED[id], { figure: id }] as const

function side(board: Board, v: DrawnView): void {
  const c = v.corner
  const back = [c('plateBottom', 'plateBack'), c('plateTop', 'plateBack')] as const
  const front = [c('plateBottom', 'plateFront'), c('plateTop', 'plateFront')] as const
  polyline(board, [back[0], back[1], front[1], front[0], back[0]])
  const boss = v.ring('boss')
  const bore = v.ring('bossBore')
  circle(board, boss.c, boss.r)
  circle(board, bore.c, bore.r)
  line(board, c('armTop', 'plateFront'), v.edge('armTop').b)
  line(board, c('armUnder', 'plateFront'), v.edge('armUnder').b)
  const recess = [
    c('recessLeft', 'recessTop'),
    c('recessTop', 'recessRight'),
    c('recessRight', 'recessUnder'),
    c('recessUnder', 'recessLeft'),
  ]
  polyline(board, [...recess, ...recess.slice(0, 1)], 0.34)
  const centre = c('bossUp', 'bossAcross')
  line(board, lerp(centre, v.edge('bossUp').b, -1.05), v.edge('bossUp').b, PEN.thin)
  line(board, lerp(centre, v.edge('bossAcross').b, -1.05), v.edge('bossAcross').b, PEN.thin)

  levelDimension(board, back[1], v.edge('bossUp').b, 1.12 * inch, ...figure('bracket/boss_reach'))
  levelDimension(board, back[0], front[0], 4.22 * inch, PRINTED['bracket/plate_thickness'], {
    figure: 'bracket/plate_thickness',
    outside: 'beyond-b',
    height: 2.7,
  })
  const radius: Pt = [16.02 * inch, 3.12 * inch]
  leader(board, polar(boss.c, boss.r, 0.95), add(radius, [-1.5, -4.4]), add(radius, [-1.5, -4.4]))
  words(board, radius, PRINTED['bracket/boss_radius'], { height: 2.9, figure: 'bracket/boss_radius' })
  const note: Pt = [15.86 * inch, 1.3 * inch]
  leader(board, polar(bore.c, bore.r, -0.9), add(note, [3, 3.4]), add(note, [3, 3.4]))
  words(board, note, PRINTED['bracket/boss_bore'], {
    height: 2.7,
    anchor: 'start',
    figure: 'bracket/boss_bore',
  })
}

function palm(board: Board, v: DrawnView): void {
  const c = v.corner
  const [tl, tr, br, bl] = [
    c('palmTop', 'palmLeft'),
    c('palmTop', 'palmRight'),
    c('palmBottom', 'palmRight'),
    c('palmBottom', 'palmLeft'),
  ]
  polyline(board, [tl, tr, br, bl, tl])
  for (let i = 1; i <= 4; i++) circle(board, v.ring(`palmHole${i}`).c, v.ring(`palmHole${i}`).r, 0.36)
  for (const name of ['holesLeft', 'holesRight', 'holesTop', 'holesBottom']) {
    const { a, b } = v.edge(name)
    const past = 5 / Math.hypot(b[0] - a[0], b[1] - a[1])
    line(board, lerp(a, b, -past), lerp(a, b, past), PEN.thin)
    line(board, lerp(a, b, 1 - past), lerp(a, b, 1 + past), PEN.thin)
  }
  const hole = c('holesLeft', 'holesBottom')
  const upper = c('holesLeft', 'holesTop')
  const other = c('holesRight', 'holesTop')
  const left = 13.7 * inch
  uprightDimension(board, add(hole, [-5, 0]), add(upper, [-5, 0]), left, ...figure('bracket/palm_pitch'))
  uprightDimension(board, bl, [left + 1.2, hole[1]], left, PRINTED['bracket/palm_margin'], {
    figure: 'bracket/palm_margin',
    outside: 'beyond-a',
    height: 2.7,
  })
  uprightDimension(board, br, tr, 15.95 * inch, ...figure('bracket/palm_height'))
  levelDimension(board, bl, br, 7.74 * inch, ...figure('bracket/palm_width'))
  levelDimension(
    board,
    add(upper, [0, -5]),
    add(other, [0, -5]),
    4.68 * inch,
    ...figure('bracket/palm_pitch_across'),
  )
}
