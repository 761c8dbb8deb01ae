import { RECESS, UNDERSIDE_ANGLE } from './bracket.ts'
import { HOOD_HEIGHT, HOOD_SLANT, LEVELS, SIZES } from './ventilator.ts'

const s = SIZES
const inch = 25.4
const degrees = 180 / Math.PI

const recessArea = Math.abs(
  RECESS.reduce((sum, [x, y], i) => {
    const [qx, qy] = RECESS[(i + 1) % RECESS.length] ?? [x, y]
    return sum + (x * qy - qx * y) / 2
  }, 0),
)

const lengths = {
  overall_height: LEVELS.top,
  flange_od: s.flangeOd,
  flange_thickness: s.flangeThickness,
  flange_bore: s.flangeBore,
  bolt_circle: s.boltCircle,
  edge_margin: s.edgeMargin,
  hole_dia: s.holeDia,
  hole_chord: s.boltCircle * Math.sin(Math.PI / s.holes),
  hole_chord_two: s.boltCircle * Math.sin((2 * Math.PI) / s.holes),
  guard_bar_width: s.guardBar,
  sheet_thickness: s.sheet,
  drum_od: s.drumOd,
  drum_bore: s.drumOd - 2 * s.sheet,
  drum_height: s.drumHeight,
  drum_blank_length: Math.PI * (s.drumOd - s.sheet),
  cone_height: s.coneHeight,
  cone_slant: Math.hypot(s.coneHeight, (s.drumOd - s.neckOd) / 2),
  neck_od: s.neckOd,
  neck_height: s.neckHeight,
  opening_height: s.opening,
  hood_od: s.hoodOd,
  hood_height: HOOD_HEIGHT,
  hood_slant: HOOD_SLANT,
  lever_centres: s.leverCentres,
  stay_length: s.stayFoot + s.stayReach + s.stayRise,
  stay_standoff: s.stayThickness + s.stayReach,
  palm_width: s.palmWidth,
  palm_height: s.palmHeight,
  palm_pitch: s.palmPitchUp,
  palm_pitch_across: s.palmPitchAcross,
  palm_margin: s.palmMargin,
  plate_thickness: s.plateThickness,
  boss_reach: s.bossReach,
  boss_radius: s.bossRadius,
  boss_bore: s.bossBore,
}

const areas = {
  gasket_area: (Math.PI / 4) * (s.flangeOd ** 2 - s.flangeBore ** 2),
  recess_area: recessArea,
}

const angles = {
  lever_angle: s.leverAngle,
  cone_angle: 2 * Math.atan((s.drumOd - s.neckOd) / 2 / s.coneHeight) * degrees,
  underside_angle: UNDERSIDE_ANGLE,
}

export type DimensionName = keyof typeof lengths | keyof typeof areas | keyof typeof angles | 'hole_count'

export interface TrueValue {
  value: number
  unit: 'mm' | 'mm²' | '°' | '1'
}

const scaled = (sizes: Record<string, number>, k: number, unit: TrueValue['unit']) =>
  Object.entries(sizes).map(([name, value]): [string, TrueValue] => [name, { value: value * k, unit }])

/** The true value of every dimension of the job. */
export const TRUE_VALUES: Readonly<Record<string, TrueValue>> = Object.fromEntries([
  ...scaled(lengths, inch, 'mm'),
  ...scaled(areas, inch ** 2, 'mm²'),
  ...scaled(angles, 1, '°'),
  ['hole_count', { value: s.holes, unit: '1' }],
])
