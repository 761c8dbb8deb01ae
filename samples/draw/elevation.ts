import { bothSides, edge, type Outlines, ring, type ViewPlan } from './features.ts'
import { polar } from './plane.ts'
import { LEVELS, SIZES } from './ventilator.ts'

const s = SIZES
const y = LEVELS
const drum = s.drumOd / 2
const neck = s.neckOd / 2
const foot = s.flangeOd / 2
const hood = s.hoodOd / 2
const cap = s.capOd / 2

export const LEVER_PIVOT = [0.8, 4.25] as const
const turn = (s.leverAngle * Math.PI) / 180
const pivot = LEVER_PIVOT
const tip = polar(pivot, s.leverCentres, turn)
const pivotTick = polar(pivot, 0.9, turn + Math.PI / 2)
const tipTick = polar(tip, 0.8, turn + Math.PI / 2)

const stayIn = neck + s.stayThickness
const stayOut = stayIn + s.stayReach
const stayUp = y.hoodRim - s.stayRise
const stayFoot = stayUp - s.stayFoot
const t = s.stayThickness

const lever: Outlines = {
  leverAxis: edge(pivot[0], pivot[1], tip[0], tip[1]),
  leverLevel: edge(pivot[0], pivot[1], pivot[0] + 2.9, pivot[1]),
  pivotTick: edge(pivot[0], pivot[1], pivotTick[0], pivotTick[1]),
  tipTick: edge(tip[0], tip[1], tipTick[0], tipTick[1]),
  pivotBoss: ring(pivot[0], pivot[1], 0.5),
  tipBoss: ring(tip[0], tip[1], 0.4),
  pivotHole: ring(pivot[0], pivot[1], 0.25),
  tipHole: ring(tip[0], tip[1], 0.17),
}

const stay: Outlines = {
  ...bothSides('stayEnd', stayIn - t, stayFoot, stayIn, stayFoot),
  ...bothSides('stayFoot', stayIn, stayFoot, stayIn, stayUp),
  ...bothSides('stayReach', stayIn, stayUp, stayOut, stayUp),
  ...bothSides('stayRise', stayOut, stayUp, stayOut, y.hoodRim),
  ...bothSides('stayReachBack', stayIn - t, stayUp + t, stayOut - t, stayUp + t),
  ...bothSides('stayRiseBack', stayOut - t, stayUp + t, stayOut - t, y.hoodRim),
}

/** Half in section (left), half in outside view (right), 3" = 1'-0". */
export const ELEVATION: ViewPlan = {
  id: 'elevation',
  origin: [3.62 * 25.4, 8.28 * 25.4],
  statedScale: 0.25,
  trueScale: 0.25,
  outlines: {
    axis: edge(0, 0, 0, y.top),
    ...bothSides('base', 0, 0, foot, 0),
    ...bothSides('rim', foot, 0, foot, y.flangeTop),
    ...bothSides('footTop', foot, y.flangeTop, drum, y.flangeTop),
    ...bothSides('drum', drum, y.flangeTop, drum, y.drumTop),
    ...bothSides('drumSeam', 0, y.drumTop, drum, y.drumTop),
    ...bothSides('cone', drum, y.drumTop, neck, y.coneTop),
    ...bothSides('neckSeam', 0, y.coneTop, neck, y.coneTop),
    ...bothSides('neck', neck, y.coneTop, neck, y.neckTop),
    ...bothSides('neckTop', 0, y.neckTop, neck, y.neckTop),
    ...bothSides('hoodRim', 0, y.hoodRim, hood, y.hoodRim),
    ...bothSides('hoodLip', hood, y.hoodRim, hood, y.lipTop),
    ...bothSides('hoodBend', 0, y.lipTop, hood, y.lipTop),
    ...bothSides('hoodSlope', hood, y.lipTop, cap, y.slopeTop),
    ...bothSides('capSeat', 0, y.slopeTop, cap, y.slopeTop),
    ...bothSides('capSide', cap, y.slopeTop, cap, y.top),
    ...bothSides('capTop', 0, y.top, cap, y.top),
    ...stay,
    ...lever,
  },
}
