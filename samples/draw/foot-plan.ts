import { edge, type Outlines, ring, type ViewPlan } from './features.ts'
import { polar } from './plane.ts'
import { SIZES } from './ventilator.ts'

const s = SIZES
const pitch = s.boltCircle / 2
const bore = s.flangeBore / 2
const bar = s.guardBar / 2

const holes: Outlines = Object.fromEntries(
  Array.from({ length: s.holes }, (_, i) => {
    const [x, y] = polar([0, 0], pitch, (2 * Math.PI * i) / s.holes)
    return [`hole${i + 1}`, ring(x, y, s.holeDia / 2)]
  }),
)

const radials: Outlines = Object.fromEntries(
  [1, 3, 5, 7].map((i) => {
    const angle = (2 * Math.PI * i) / s.holes
    const a = polar([0, 0], pitch - 0.6, angle)
    const b = polar([0, 0], pitch + 0.6, angle)
    return [`radial${i + 1}`, edge(a[0], a[1], b[0], b[1])]
  }),
)

/** Holes 1, 2, … run from the right-hand one against the clock. 6" = 1'-0" as stated; truly drawn 1.5 % larger. */
export const FOOT_PLAN: ViewPlan = {
  id: 'foot-plan',
  origin: [9.85 * 25.4, 4.3 * 25.4],
  statedScale: 0.5,
  trueScale: 0.5 * 1.015,
  outlines: {
    rim: ring(0, 0, s.flangeOd / 2),
    boltCircle: ring(0, 0, pitch),
    drumWall: ring(0, 0, s.drumOd / 2),
    bore: ring(0, 0, bore),
    axisAcross: edge(-pitch, 0, pitch, 0),
    axisUp: edge(0, -pitch, 0, pitch),
    tick1: edge(pitch, 0, pitch, 0.5),
    tick5: edge(-pitch, 0, -pitch, 0.5),
    tick3: edge(0, pitch, 0.5, pitch),
    tick7: edge(0, -pitch, 0.5, -pitch),
    barLeft: edge(-bar, -Math.sqrt(bore ** 2 - bar ** 2), -bar, Math.sqrt(bore ** 2 - bar ** 2)),
    barRight: edge(bar, -Math.sqrt(bore ** 2 - bar ** 2), bar, Math.sqrt(bore ** 2 - bar ** 2)),
    ...holes,
    ...radials,
  },
}
