import { edge, type Outlines, ring, type ViewPlan } from './features.ts'
import { polar } from './plane.ts'
import { SIZES } from './ventilator.ts'

const s = SIZES
const boss = [s.bossReach, s.bossHeight] as const
/** Where the underside of the arm springs from the plate. */
const spring = [s.plateThickness, 0.5] as const

const toBoss = Math.atan2(boss[1] - spring[1], boss[0] - spring[0])
/** The underside runs to a tangent of the boss. */
const under = toBoss - Math.asin(s.bossRadius / Math.hypot(boss[0] - spring[0], boss[1] - spring[1]))
/** Angle between the underside of the arm and the face of the plate, degrees. */
export const UNDERSIDE_ANGLE = 90 - (under * 180) / Math.PI
const touch = polar(boss, s.bossRadius, under - Math.PI / 2)

/** Corners of the recess in the web, in order. */
export const RECESS = [
  [1.125, 4],
  [2.75, 4],
  [2.75, 2.25],
  [1.125, 1.375],
] as const

const [r0, r1, r2, r3] = RECESS

/** The palm is drawn below the side view: where its lower left corner lies. */
const px = 0.9
const py = -7.05
const hx = px + (s.palmWidth - s.palmPitchAcross) / 2
const hy = py + s.palmMargin

const palm: Outlines = {
  palmBottom: edge(px, py, px + s.palmWidth, py),
  palmTop: edge(px, py + s.palmHeight, px + s.palmWidth, py + s.palmHeight),
  palmLeft: edge(px, py, px, py + s.palmHeight),
  palmRight: edge(px + s.palmWidth, py, px + s.palmWidth, py + s.palmHeight),
  palmHole1: ring(hx, hy, s.palmHole / 2),
  palmHole2: ring(hx, hy + s.palmPitchUp, s.palmHole / 2),
  palmHole3: ring(hx + s.palmPitchAcross, hy + s.palmPitchUp, s.palmHole / 2),
  palmHole4: ring(hx + s.palmPitchAcross, hy, s.palmHole / 2),
  holesLeft: edge(hx, hy, hx, hy + s.palmPitchUp),
  holesRight: edge(hx + s.palmPitchAcross, hy, hx + s.palmPitchAcross, hy + s.palmPitchUp),
  holesTop: edge(hx, hy + s.palmPitchUp, hx + s.palmPitchAcross, hy + s.palmPitchUp),
  holesBottom: edge(hx, hy, hx + s.palmPitchAcross, hy),
}

/** Side view and palm of the cast bracket, 6" = 1'-0". */
export const BRACKET: ViewPlan = {
  id: 'bracket',
  origin: [13.62 * 25.4, 3.95 * 25.4],
  statedScale: 0.5,
  trueScale: 0.5,
  outlines: {
    plateBack: edge(0, 0, 0, s.palmHeight),
    plateFront: edge(s.plateThickness, 0, s.plateThickness, s.palmHeight),
    plateBottom: edge(0, 0, s.plateThickness, 0),
    plateTop: edge(0, s.palmHeight, s.plateThickness, s.palmHeight),
    armTop: edge(s.plateThickness, boss[1] + s.bossRadius, boss[0], boss[1] + s.bossRadius),
    armUnder: edge(spring[0], spring[1], touch[0], touch[1]),
    boss: ring(boss[0], boss[1], s.bossRadius),
    bossBore: ring(boss[0], boss[1], s.bossBore / 2),
    bossUp: edge(boss[0], boss[1], boss[0], boss[1] + 1.25),
    bossAcross: edge(boss[0], boss[1], boss[0] + 1.25, boss[1]),
    recessTop: edge(r0[0], r0[1], r1[0], r1[1]),
    recessRight: edge(r1[0], r1[1], r2[0], r2[1]),
    recessUnder: edge(r2[0], r2[1], r3[0], r3[1]),
    recessLeft: edge(r3[0], r3[1], r0[0], r0[1]),
    ...palm,
  },
}
