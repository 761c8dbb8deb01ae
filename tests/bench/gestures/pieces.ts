import { BOLTS, CORNERS, DOWELS } from './plate.ts'

type Place = readonly [number, number]

/** A place that is picked; or any place of a line or circle that was picked before and is taken as a whole. */
export interface Aim {
  at: Place
  old?: true
}

/** What is picked, millimetres of the part; or what is written in its place. */
export type Picked =
  | { measure: 'Distance' | 'Spacing' | 'Diameter' | 'Centres' | 'Angle'; at: readonly Aim[] }
  | { measure: 'formula'; formula: string; at: readonly Aim[] }
  | { measure: 'lettered' }

/** One dimension of a day's work. */
export interface Piece {
  kind: 'points' | 'lines' | 'circles' | 'centres' | 'angle' | 'alike' | 'formula' | 'lettered'
  name: string
  /** As it is printed; empty where the sheet has none. */
  figure: string
  off: number
  picked: Picked
  /** Millimetres or degrees. */
  truth: number
  /** Whether so much is drawn about it that nobody picks it from afar. */
  crowded?: true
  /** What a caliper says of the original. */
  readings?: readonly string[]
}

const at = (...places: Place[]): Aim[] => places.map((place) => ({ at: place }))

const rim = ([x, y]: Place, r: number): Aim[] =>
  at(...[0.35, 2.45, 4.55].map((a): Place => [x + r * Math.cos(a), y + r * Math.sin(a)]))

const oldRim = ([x, y]: Place, r: number): Aim[] => [
  { at: [x + r * Math.cos(0.35), y + r * Math.sin(0.35)], old: true },
]

const upright = (x: number): Aim[] => at([x, 75], [x, 165])

const [BOLT, NEXT] = [BOLTS[0] as Place, BOLTS[1] as Place]
const [LL, LR, UR] = CORNERS as readonly [Place, Place, Place]

const distance = (...ends: [Place, Place]): Picked => ({ measure: 'Distance', at: at(...ends) })

/** Twenty-five, in the order that they are done in: those of one tool after another. */
export const PIECES: readonly Piece[] = [
  {
    kind: 'points',
    name: 'Plate width',
    figure: '300,0',
    off: 1,
    truth: 300,
    picked: distance([0, 0], [300, 0]),
    readings: ['299,8', '299,9'],
  },
  {
    kind: 'points',
    name: 'Plate height',
    figure: '240,0',
    off: 1,
    truth: 240,
    picked: distance([0, 0], [0, 240]),
  },
  {
    kind: 'points',
    name: 'Plate thickness',
    figure: '12,5',
    off: 1,
    truth: 12.5,
    picked: distance([380, 0], [392.5, 0]),
    crowded: true,
    readings: ['12,6'],
  },
  {
    kind: 'points',
    name: 'Hub length',
    figure: '47,5',
    off: 1,
    truth: 47.5,
    picked: distance([392.5, 160], [440, 160]),
  },
  {
    kind: 'points',
    name: 'Hub across',
    figure: '80',
    off: 1,
    truth: 80,
    picked: distance([440, 80], [440, 160]),
  },
  {
    kind: 'lines',
    name: 'Left groove',
    figure: '12',
    off: 1,
    truth: 12,
    picked: { measure: 'Spacing', at: [...upright(36), ...upright(48)] },
  },
  {
    kind: 'lines',
    name: 'Right groove',
    figure: '12',
    off: 1,
    truth: 12,
    picked: { measure: 'Spacing', at: [...upright(252), ...upright(264)] },
  },
  {
    kind: 'lines',
    name: 'Groove pitch',
    figure: '',
    off: 1,
    truth: 216,
    picked: {
      measure: 'Spacing',
      at: [
        { at: [36, 100], old: true },
        { at: [252, 100], old: true },
      ],
    },
  },
  {
    kind: 'lines',
    name: 'Slot',
    figure: '12',
    off: 1,
    truth: 12,
    picked: { measure: 'Spacing', at: at([134, 218], [166, 218], [134, 230], [166, 230]) },
  },
  {
    kind: 'circles',
    name: 'Bore',
    figure: '⌀ 80',
    off: 1,
    truth: 80,
    picked: { measure: 'Diameter', at: rim([150, 120], 40) },
    readings: ['80,2', '80,1', '80,2'],
  },
  {
    kind: 'circles',
    name: 'Recess',
    figure: '⌀ 96',
    off: 1,
    truth: 96,
    picked: { measure: 'Diameter', at: rim([150, 120], 48) },
  },
  {
    kind: 'circles',
    name: 'Bolt hole',
    figure: '8 × ⌀ 14',
    off: 8,
    truth: 14,
    picked: { measure: 'Diameter', at: rim(BOLT, 7) },
  },
  {
    kind: 'circles',
    name: 'Corner hole',
    figure: '4 × ⌀ 20',
    off: 4,
    truth: 20,
    picked: { measure: 'Diameter', at: rim(LL, 10) },
  },
  ...DOWELS.map(
    (at, k): Piece => ({
      kind: 'alike',
      name: k === 0 ? 'Dowel hole' : `Dowel hole ${k + 1}`,
      figure: '⌀ 9',
      off: 1,
      truth: 9,
      picked: { measure: 'Diameter', at: rim(at, 4.5) },
    }),
  ),
  {
    kind: 'centres',
    name: 'Corner holes across',
    figure: '252',
    off: 1,
    truth: 252,
    picked: { measure: 'Centres', at: [...oldRim(LL, 10), ...rim(LR, 10)] },
  },
  {
    kind: 'centres',
    name: 'Corner holes up',
    figure: '',
    off: 1,
    truth: 192,
    picked: { measure: 'Centres', at: [...oldRim(LR, 10), ...rim(UR, 10)] },
  },
  {
    kind: 'centres',
    name: 'Bolt hole to the next',
    figure: '',
    off: 8,
    truth: 2 * 85 * Math.sin(Math.PI / 8),
    picked: { measure: 'Centres', at: [...oldRim(BOLT, 7), ...rim(NEXT, 7)] },
  },
  {
    kind: 'angle',
    name: 'Cone',
    figure: '53° 8′',
    off: 1,
    truth: (2 * Math.atan(0.5) * 180) / Math.PI,
    picked: { measure: 'Angle', at: at([446, 83], [474, 97], [446, 157], [474, 143]) },
  },
  {
    kind: 'formula',
    name: 'Ledge',
    figure: '',
    off: 1,
    truth: 8,
    picked: { measure: 'formula', formula: '(recess - bore) / 2', at: at([190, 120], [198, 120]) },
  },
  {
    kind: 'formula',
    name: 'Edge',
    figure: '',
    off: 4,
    truth: 24,
    picked: {
      measure: 'formula',
      formula: '(plate_width - corner_holes_across) / 2',
      at: at([0, 60], [36, 61]),
    },
  },
  {
    kind: 'lettered',
    name: 'Edges rounded',
    figure: 'R 3',
    off: 1,
    truth: 3,
    picked: { measure: 'lettered' },
  },
  { kind: 'lettered', name: 'Cover', figure: '2 MM', off: 1, truth: 2, picked: { measure: 'lettered' } },
]
