import { degrees, toRadians } from '../../../src/core/geometry/angle-units.ts'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
/**
 * Sheets with known truth, errors drawn as their sigmas say. Written without the code under test:
 * the mapping is inverted here by itself, and features are displaced before they are drawn.
 */

import {
  diameterReference,
  distanceReference,
  rectangleReference,
  type StatedSize,
} from '../../../src/core/calibration/reference.ts'
import type { MappingKind, Mark } from '../../../src/core/job/model/types.ts'
import { MAPPINGS } from '../../../src/core/mapping/mappings.ts'
import { viewFrame } from '../../../src/core/mapping/view-frame.ts'
import type { ViewMapping } from '../../../src/core/mapping/view-mapping.ts'
import { type Feature, featureOf } from '../../../src/core/measuring/features/feature-of-mark.ts'
import type { RandomStream } from '../../../src/core/uncertainty/random.ts'
import { exact, measured } from '../../../src/core/uncertainty/uncertain.ts'

export type XY = [number, number]

export interface SheetPlan {
  kind: MappingKind
  references: 'minimum' | 'many'
  /** Standard uncertainty of a drawn feature, mm in true size. */
  draughting: number
  /** Pixels. */
  sigma: number
}

export interface SimulatedSheet {
  view: ViewMapping
  sizes: StatedSize[]
  /** Marks the measures are taken from, with the true values. */
  point(name: 'p' | 'q'): Feature
  line(name: 'a' | 'b' | 'c'): Feature
  circle(name: 'k' | 'l'): Feature
  path(name: 'open' | 'closed'): Feature
}

const CENTRE: XY = [2400, 1900]
const MM_PER_PX = 0.17

/** True geometry, mm: y down as on the sheet. */
export const TRUE = {
  p: [-180, -95] as XY,
  q: [165, 120] as XY,
  a: [
    [-200, -120],
    [190, -120],
  ] as [XY, XY],
  b: [
    [-170, 95],
    [205, 95],
  ] as [XY, XY],
  c: [
    [-40, -110],
    [-40 + 150 * Math.cos(1.1), -110 + 150 * Math.sin(1.1)],
  ] as [XY, XY],
  k: { centre: [-90, 30] as XY, radius: 62 },
  l: { centre: [120, -20] as XY, radius: 45 },
  open: [
    [-150, 60],
    [-60, -40],
    [30, 25],
    [110, -70],
    [180, 10],
  ] as XY[],
  closed: [
    [-120, -80],
    [60, -100],
    [150, 20],
    [40, 110],
    [-100, 70],
  ] as XY[],
}

const distanceOf = (p: XY, q: XY): number => Math.hypot(q[0] - p[0], q[1] - p[1])
const shoelace = (points: XY[]): number =>
  Math.abs(
    points.reduce((s, [x, y], i) => {
      const [nx, ny] = points[(i + 1) % points.length] as XY
      return s + x * ny - nx * y
    }, 0) / 2,
  )

export const TRUE_VALUES = {
  distance: distanceOf(TRUE.p, TRUE.q),
  'spacing of lines': 215,
  'spacing of a point': 120 + 120,
  diameter: 124,
  radius: 45,
  centres: distanceOf(TRUE.k.centre, TRUE.l.centre),
  'slot width': TRUE.k.radius + TRUE.l.radius,
  'slot length': distanceOf(TRUE.k.centre, TRUE.l.centre) + TRUE.k.radius + TRUE.l.radius,
  angle: 1.1,
  run: TRUE.open.slice(1).reduce((s, p, i) => s + distanceOf(TRUE.open[i] as XY, p), 0),
  area: shoelace(TRUE.closed),
}
export type SimulatedMeasure = keyof typeof TRUE_VALUES

export function simulateSheet(plan: SheetPlan, random: RandomStream): SimulatedSheet {
  const { sigma, draughting } = plan
  const toPixel = sheetDistortion(plan.kind, random)
  const off = (): number => draughting * random.normal()
  const pick = ([x, y]: XY): Pixel => {
    const [px, py] = toPixel([x, y])
    return pixel(px + sigma * random.normal(), py + sigma * random.normal())
  }
  let marks = 0
  const base = () => ({ id: `M${++marks}`, sheet: 'S', how: 'hand' as const, sigma })
  const point = ([x, y]: XY): Feature =>
    featureOf({ ...base(), kind: 'point', pixel: pick([x + off(), y + off()]) })
  const line = ([p, q]: [XY, XY], n: number): Feature => {
    const length = distanceOf(p, q)
    const [nx, ny] = [-(q[1] - p[1]) / length, (q[0] - p[0]) / length]
    const [e, f] = [off(), off()]
    const from: XY = [p[0] + e * nx, p[1] + e * ny]
    const to: XY = [q[0] + f * nx, q[1] + f * ny]
    const pixels = Array.from({ length: n }, (_, i) => {
      const t = i / (n - 1)
      return pick([from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])])
    })
    return featureOf({ ...base(), kind: 'line', pixels })
  }
  const circle = (c: { centre: XY; radius: number }, n: number, from = 0, arc = 2 * Math.PI): Feature => {
    const [x, y, r] = [c.centre[0] + off(), c.centre[1] + off(), c.radius + off() / Math.SQRT2]
    const pixels = Array.from({ length: n }, (_, i) => {
      const a = from + (arc * i) / n
      return pick([x + r * Math.cos(a), y + r * Math.sin(a)])
    })
    return featureOf({ ...base(), kind: 'circle', pixels })
  }
  const path = (points: XY[], closed: boolean): Feature => {
    const mark: Mark = {
      ...base(),
      kind: 'path',
      closed,
      pixels: points.map(([x, y]) => pick([x + off(), y + off()])),
    }
    return featureOf(mark)
  }
  const stated = (size: number, u: number) => measured(size + u * random.normal(), u, 'stated size')
  const between = (id: string, p: XY, q: XY, u: number): StatedSize[] =>
    distanceReference(id, point(p), point(q), stated(distanceOf(p, q), u))
  const rectangle = (id: string, x: number, y: number, w: number, h: number, u: number): StatedSize[] =>
    rectangleReference(
      id,
      [point([x, y]), point([x + w, y]), point([x + w, y + h]), point([x, y + h])],
      stated(w, u),
      stated(h, u),
      exact(0),
    )

  const u = 0.1
  const minimum: Record<MappingKind, () => StatedSize[]> = {
    uniform: () => between('R1', [-190, -100], [180, 90], u),
    'two-axis': () => [...between('R1', [-200, 10], [190, 20], u), ...between('R2', [15, -130], [5, 125], u)],
    affine: () => [
      ...between('R1', [-200, 10], [190, 20], u),
      ...between('R2', [-120, -125], [70, 125], u),
      ...between('R3', [-90, 130], [110, -120], u),
    ],
    projective: () => rectangle('R1', -200, -130, 400, 260, u),
  }
  const many = (): StatedSize[] => [
    ...between('R1', [-200, -125], [195, -120], u),
    ...between('R2', [-195, 120], [200, 125], u),
    ...between('R3', [-190, -120], [-185, 125], u),
    ...between('R4', [190, -125], [185, 130], u),
    ...between('R5', [-150, -110], [140, 115], u),
    ...between('R6', [-160, 118], [150, -112], u),
    ...between('R7', [0, -120], [10, 110], 0),
    ...between('R8', [-150, 5], [160, -5], 0),
    ...diameterReference('R9', circle({ centre: [-70, -30], radius: 80 }, 12), stated(160, u)),
    ...rectangle('R10', -110, -80, 230, 150, u),
  ]
  const sizes = plan.references === 'minimum' ? minimum[plan.kind]() : many()
  const features = sizes.flatMap((s) => s.equations.flatMap((e) => e.features))
  return {
    view: { mapping: MAPPINGS[plan.kind], frame: viewFrame(features, toRadians(degrees(GRAIN))), draughting },
    sizes,
    point: (name) => point(TRUE[name]),
    line: (name) => line(TRUE[name], 6),
    circle: (name) => (name === 'k' ? circle(TRUE.k, 10) : circle(TRUE.l, 9, 0.4, 4)),
    path: (name) => path(TRUE[name], name === 'closed'),
  }
}

export const GRAIN = 2.5

/** From true mm to pixels: a random distortion of the given kind, inverted by hand. */
export function sheetDistortion(kind: MappingKind, random: RandomStream): (p: XY) => XY {
  const s = MM_PER_PX * (1 + 0.02 * random.normal())
  const turn = kind === 'two-axis' ? 0 : 2 * Math.PI * random.uniform()
  const e = kind === 'uniform' ? 0 : 0.01 * random.normal()
  const skew = kind === 'affine' || kind === 'projective' ? 0.005 * random.normal() : 0
  const tilt = (): number => (kind === 'projective' ? 3e-5 * random.normal() : 0)
  const [h, v] = [tilt(), tilt()]
  const [a, b, d] = [s * (1 + e), s * skew, s * (1 - e)]
  const g = kind === 'two-axis' ? (GRAIN * Math.PI) / 180 : 0
  return ([tx, ty]) => {
    const x = Math.cos(turn) * tx - Math.sin(turn) * ty
    const y = Math.sin(turn) * tx + Math.cos(turn) * ty
    // (S − x hᵀ) u = x
    const [m11, m12, m21, m22] = [a - x * h, b - x * v, b - y * h, d - y * v]
    const det = m11 * m22 - m12 * m21
    const ux = (m22 * x - m12 * y) / det
    const uy = (m11 * y - m21 * x) / det
    return [CENTRE[0] + Math.cos(g) * ux - Math.sin(g) * uy, CENTRE[1] + Math.sin(g) * ux + Math.cos(g) * uy]
  }
}
