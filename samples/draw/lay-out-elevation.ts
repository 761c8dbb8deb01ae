import {
  angleDimension,
  type DimensionOptions,
  dimensionLine,
  leader,
  levelDimension,
  witness,
} from './dimension-line.ts'
import type { DrawnView } from './draughtsman.ts'
import { type Board, centreLine, circle, hatch, line, PEN, polyline, words } from './drawing-board.ts'
import { add, lerp, type Pt, polar, quarter, sub, times, unit } from './plane.ts'
import { type FigurePlace, PRINTED } from './printed-figures.ts'

const SMALL = 2.7
const figure = (id: FigurePlace, options: DimensionOptions = {}) =>
  [PRINTED[id], { figure: id, ...options }] as const

export function layOutElevation(board: Board, v: DrawnView): void {
  outlines(board, v)
  section(board, v)
  lever(board, v)
  stays(board, v)
  rivets(board, v)
  figures(board, v)
  const foot = v.along('axis', 0)
  words(board, [foot[0], 9.42 * 25.4], 'ELEVATION, HALF IN SECTION', { height: 4, width: PEN.title })
  words(board, [foot[0], 9.7 * 25.4], `SCALE 3" = 1'-0"`, { height: 2.8 })
}

function outlines(board: Board, v: DrawnView): void {
  const c = v.corner
  const right = (a: string, b: string): Pt => c(`${a}R`, `${b}R`)
  const left = (a: string, b: string): Pt => c(`${a}L`, `${b}L`)
  for (const [side, pen] of [
    [right, PEN.outline],
    [left, PEN.heavy],
  ] as const) {
    const end = side === right ? 'R' : 'L'
    const middle = (name: string) => c(`${name}${end}`, 'axis')
    polyline(board, [middle('base'), side('base', 'rim'), side('footTop', 'rim'), side('footTop', 'drum')])
    line(board, side('footTop', 'drum'), side('drumSeam', 'drum'), pen)
    line(board, v.edge(`cone${end}`).a, v.edge(`cone${end}`).b, pen)
    line(board, side('neckSeam', 'neck'), side('neckTop', 'neck'), pen)
    line(board, middle('drumSeam'), side('drumSeam', 'drum'))
    line(board, middle('neckSeam'), side('neckSeam', 'neck'))
    line(board, middle('neckTop'), side('neckTop', 'neck'))
    line(board, middle('hoodRim'), side('hoodRim', 'hoodLip'))
    line(board, side('hoodRim', 'hoodLip'), side('hoodBend', 'hoodLip'), pen)
    line(board, side('hoodBend', 'hoodLip'), middle('hoodBend'))
    line(board, v.edge(`hoodSlope${end}`).a, v.edge(`hoodSlope${end}`).b, pen)
    line(board, middle('capSeat'), side('capSeat', 'capSide'))
    polyline(board, [side('capSeat', 'capSide'), side('capTop', 'capSide'), middle('capTop')])
  }
  const axis = v.edge('axis')
  const past = times(unit(sub(axis.b, axis.a)), 3.4)
  centreLine(board, sub(axis.a, past), add(axis.b, past))
}

function section(board: Board, v: DrawnView): void {
  const k = 25.4 * v.plan.trueScale
  const outer = [v.corner('baseL', 'rimL'), v.corner('footTopL', 'rimL')] as const
  const bore = v.corner('baseL', 'axis')[0] - 4 * k
  const foot: Pt = [bore, lerp(outer[0], v.corner('baseL', 'axis'), 1 / 3)[1]]
  const head: Pt = [bore, v.corner('footTopL', 'drumL')[1]]
  line(board, foot, head)
  line(board, v.corner('footTopL', 'drumL'), head)
  hatch(board, [outer[0], outer[1], head, foot])
}

function lever(board: Board, v: DrawnView): void {
  const pivot = v.ring('pivotBoss')
  const tip = v.ring('tipBoss')
  const along = unit(sub(tip.c, pivot.c))
  const across = quarter(along)
  for (const side of [-1, 1]) {
    line(
      board,
      add(pivot.c, times(across, side * pivot.r * 0.99)),
      add(tip.c, times(across, side * tip.r * 0.99)),
      0.34,
    )
  }
  for (const name of ['pivotBoss', 'tipBoss', 'pivotHole', 'tipHole']) {
    const { c, r } = v.ring(name)
    circle(board, c, r, 0.34)
  }
  const axis = v.edge('leverAxis')
  line(board, sub(axis.a, times(along, 4.4)), add(axis.b, times(along, 3.8)), PEN.thin)
  const level = v.edge('leverLevel')
  line(board, lerp(level.a, level.b, -0.24), level.b, PEN.thin)
  for (const [name, corner] of [
    ['pivotTick', v.corner('leverAxis', 'pivotTick')],
    ['tipTick', v.corner('leverAxis', 'tipTick')],
  ] as const) {
    const { a, b } = v.edge(name)
    const d = unit(sub(b, a))
    line(board, sub(corner, times(d, 4)), add(corner, times(d, 4)), PEN.thin)
  }
}

function stays(board: Board, v: DrawnView): void {
  for (const end of ['R', 'L']) {
    const at = (a: string, b: string) => v.corner(`${a}${end}`, `${b}${end}`)
    polyline(
      board,
      [
        at('stayEnd', 'neck'),
        at('stayEnd', 'stayFoot'),
        at('stayFoot', 'stayReach'),
        at('stayReach', 'stayRise'),
        at('stayRise', 'hoodRim'),
      ],
      0.34,
    )
    polyline(
      board,
      [at('neck', 'stayReachBack'), at('stayReachBack', 'stayRiseBack'), at('stayRiseBack', 'hoodRim')],
      0.34,
    )
    const foot = lerp(at('stayEnd', 'stayFoot'), at('stayFoot', 'stayReach'), 0.5)
    const outward = end === 'R' ? 1 : -1
    const head: Pt = [foot[0] + outward * 0.1, foot[1]]
    polyline(
      board,
      [
        [head[0], head[1] - 1.2],
        [head[0] + outward * 1.2, head[1] - 1],
        [head[0] + outward * 1.2, head[1] + 1],
        [head[0], head[1] + 1.2],
      ],
      0.28,
    )
  }
}

function rivets(board: Board, v: DrawnView): void {
  const k = 25.4 * v.plan.trueScale
  const [x0] = v.along('axis', 0)
  const seam = v.corner('drumSeamR', 'axis')[1]
  const foot = v.corner('footTopR', 'drumR')[1]
  for (let i = 0; i < 6; i++) {
    // Evenly spaced round the drum, so they crowd towards its edge.
    const x = x0 + 4.375 * k * Math.sin(((i + 0.5) * Math.PI) / 15)
    for (const y of [seam + 0.42 * k, foot - 0.42 * k]) circle(board, [x, y], 0.62, 0.24)
  }
}

function figures(board: Board, v: DrawnView): void {
  const inch = 25.4
  const c = v.corner
  const chain = 1.62 * inch
  const rim = c('footTopL', 'rimL')
  const foot = c('baseL', 'rimL')
  const levels = {
    foot: foot[1],
    rim: rim[1],
    drum: c('drumSeamL', 'drumL'),
    neck: c('neckSeamL', 'neckL'),
    neckTop: c('neckTopL', 'neckL'),
    hood: c('hoodRimL', 'hoodLipL'),
    top: c('capTopL', 'capSideL'),
  }
  const step = (a: Pt, b: Pt, id: FigurePlace, options: DimensionOptions = {}) =>
    dimensionLine(board, [chain, a[1]], [chain, b[1]], ...figure(id, options))
  const overall = 1.05 * inch
  witness(board, foot, [overall, foot[1]])
  witness(board, levels.top, [overall, levels.top[1]])
  for (const p of [rim, levels.drum, levels.neck, levels.neckTop, levels.hood]) {
    witness(board, p, [chain, p[1]])
  }
  step(foot, rim, 'elevation/flange_thickness', { outside: 'beyond-a', height: SMALL })
  step(rim, levels.drum, 'elevation/drum_height')
  step(levels.drum, levels.neck, 'elevation/cone_height')
  step(levels.neck, levels.neckTop, 'elevation/neck_height', { height: SMALL })
  step(levels.neckTop, levels.hood, 'elevation/opening_height', { height: 2.4 })
  step(levels.hood, levels.top, 'elevation/hood_height', { height: SMALL })
  dimensionLine(board, [overall, foot[1]], [overall, levels.top[1]], ...figure('elevation/overall_height'))
  levelDimension(
    board,
    c('hoodBendL', 'hoodLipL'),
    c('hoodBendR', 'hoodLipR'),
    1.5 * inch,
    ...figure('elevation/hood_od'),
  )
  levelDimension(board, foot, c('baseR', 'rimR'), 8.82 * inch, ...figure('elevation/flange_od', { at: 0.42 }))
  const across = (left: Pt, right: Pt, id: FigurePlace, at: number) =>
    dimensionLine(board, left, right, ...figure(id, { at }))
  across(v.along('drumL', 0.87), v.along('drumR', 0.87), 'elevation/drum_od', 0.25)
  across(v.along('neckL', 0.5), v.along('neckR', 0.5), 'elevation/neck_od', 0.26)

  aligned(board, c('hoodBendL', 'hoodLipL'), c('capSeatL', 'capSideL'), -13, 'elevation/hood_slant', {
    at: 0.64,
  })
  aligned(board, c('leverAxis', 'pivotTick'), c('leverAxis', 'tipTick'), -5.2, 'elevation/lever_centres', {
    from: 4,
  })
  const pivot = c('leverAxis', 'leverLevel')
  const axis = v.edge('leverAxis')
  const rise = Math.atan2(axis.b[1] - axis.a[1], axis.b[0] - axis.a[0])
  angleDimension(board, pivot, 15.5, 0, rise, PRINTED['elevation/lever_angle'], {
    figure: 'elevation/lever_angle',
  })
  callOut(board, v)
}

/** A dimension line alongside a sloping feature; offset is towards y of the direction from a to b. */
function aligned(
  board: Board,
  a: Pt,
  b: Pt,
  offset: number,
  id: FigurePlace,
  { from = 0, at = 0.5 }: { from?: number; at?: number } = {},
): void {
  const across = times(quarter(unit(sub(b, a))), Math.sign(offset))
  const to = times(across, Math.abs(offset))
  witness(board, add(a, times(across, from)), add(a, to))
  witness(board, add(b, times(across, from)), add(b, to))
  dimensionLine(board, add(a, to), add(b, to), ...figure(id, { at }))
}

function callOut(board: Board, v: DrawnView): void {
  const id: FigurePlace = 'elevation/sheet_thickness'
  const tip = v.along('coneR', 0.45)
  const end: Pt = [5.18 * 25.4, tip[1] - 3]
  leader(board, tip, add(end, [-3, 0]), end)
  words(board, add(end, [1.4, 0]), PRINTED[id], { height: 2.9, anchor: 'start', figure: id })
  const rivet = v.corner('drumSeamR', 'drumR')
  const note: Pt = [5.18 * 25.4, rivet[1] + 7]
  leader(board, [rivet[0] - 1.7, rivet[1] + 3], add(note, [-3, 0]), note)
  words(board, add(note, [1.4, 0]), 'RIVETS 3/16" DIA.', { height: 2.3, anchor: 'start' })
  words(board, add(note, [1.4, 6]), 'CLOSED COLD', { height: 2.3, anchor: 'start' })
  const stay = v.along('stayRiseR', 0.4)
  const text: Pt = [5.18 * 25.4, stay[1] + 5]
  leader(board, stay, add(text, [-3, 0]), text)
  words(board, add(text, [1.4, 0]), '4 STAYS', { height: 2.3, anchor: 'start' })
  words(board, add(text, [1.4, 5]), '3/16" FLAT', { height: 2.3, anchor: 'start' })
  const damper = v.ring('tipBoss')
  const name: Pt = [5.18 * 25.4, damper.c[1] + 12]
  leader(board, polar(damper.c, damper.r, 0.7), add(name, [-3, 0]), name)
  words(board, add(name, [1.4, 0]), 'DAMPER', { height: 2.3, anchor: 'start' })
  words(board, add(name, [1.4, 4.6]), 'LEVER', { height: 2.3, anchor: 'start' })
}
