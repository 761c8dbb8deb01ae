/**
 * Figured sizes that share marks and close on themselves, on sheets with known truth and errors drawn as their sigmas say.
 * All figures are whole millimetres and exact.
 */
import {
  distanceReference,
  rectangleReference,
  type StatedSize,
} from '../../../src/core/calibration/reference.ts'
import { degrees, toRadians } from '../../../src/core/geometry/angle-units.ts'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import type { MappingKind } from '../../../src/core/job/model/types.ts'
import { MAPPINGS } from '../../../src/core/mapping/mappings.ts'
import { viewFrame } from '../../../src/core/mapping/view-frame.ts'
import type { ViewMapping } from '../../../src/core/mapping/view-mapping.ts'
import { type Feature, featureOf } from '../../../src/core/measuring/features/feature-of-mark.ts'
import type { RandomStream } from '../../../src/core/uncertainty/random.ts'
import { exact } from '../../../src/core/uncertainty/uncertain.ts'
import { GRAIN, sheetDistortion, type XY } from './simulated-sheet.ts'

const PLACES = {
  // A rectangle with whole diagonals,
  A: [-150, -110],
  B: [150, -110],
  C: [150, 115],
  D: [-150, 115],
  // a point on its top that parts it,
  M: [30, -110],
  // another rectangle, for mappings that need more,
  E: [-100, -80],
  F: [100, -80],
  G: [100, 70],
  H: [-100, 70],
  // and what is measured, along and across.
  P: [-90, -40],
  Q: [80, -35],
  R: [-40, 100],
} satisfies Record<string, XY>
type Name = keyof typeof PLACES

/** mm */
export const TRUE_DISTANCES = {
  along: Math.hypot(170, 5),
  across: Math.hypot(50, 140),
}

type Between = (id: string, a: Name, b: Name) => StatedSize[]

interface Known {
  between: Between
  rectangle: (id: string, ...corners: [Name, Name, Name, Name]) => StatedSize[]
}

/** Each case with how many of its equations follow from others. */
const CASES = {
  'four sides and both diagonals': {
    closings: 1,
    sizes: ({ between }: Known) => [
      ...between('R1', 'A', 'B'),
      ...between('R2', 'B', 'C'),
      ...between('R3', 'C', 'D'),
      ...between('R4', 'D', 'A'),
      ...between('R5', 'A', 'C'),
      ...between('R6', 'B', 'D'),
    ],
  },
  'a rectangle and its diagonal': {
    closings: 1,
    sizes: ({ between, rectangle }: Known) => [
      ...rectangle('R1', 'A', 'B', 'C', 'D'),
      ...between('R2', 'A', 'C'),
    ],
  },
  'a rectangle and its width': {
    closings: 1,
    sizes: ({ between, rectangle }: Known) => [
      ...rectangle('R1', 'A', 'B', 'C', 'D'),
      ...between('R2', 'A', 'B'),
    ],
  },
  'a chain and its overall': {
    closings: 1,
    sizes: ({ between }: Known) => [
      ...between('R1', 'A', 'M'),
      ...between('R2', 'M', 'B'),
      ...between('R3', 'A', 'B'),
      ...between('R4', 'A', 'D'),
    ],
  },
  'one size twice': {
    closings: 1,
    sizes: ({ between }: Known) => [
      ...between('R1', 'A', 'B'),
      ...between('R2', 'A', 'B'),
      ...between('R3', 'B', 'C'),
      ...between('R4', 'C', 'D'),
    ],
  },
}
export type ClosingCase = keyof typeof CASES
export const CLOSING_CASES = Object.keys(CASES) as ClosingCase[]

export interface ClosingSheet {
  view: ViewMapping
  sizes: StatedSize[]
  /** Equations that follow from others. */
  closings: number
  /** What is measured. */
  along: [Feature, Feature]
  across: [Feature, Feature]
}

/**
 * A sheet with the figured sizes of a case; for mappings that need more another rectangle is known.
 * @param draughting mm
 */
export function closingSheet(
  name: ClosingCase,
  kind: MappingKind,
  draughting: number,
  random: RandomStream,
): ClosingSheet {
  const toPixel = sheetDistortion(kind, random)
  const off = (): number => draughting * random.normal()
  const pick = ([x, y]: XY): Pixel => {
    const [px, py] = toPixel([x + off(), y + off()])
    return pixel(px + random.normal(), py + random.normal())
  }
  const marks = new Map<Name, Feature>()
  const point = (at: Name): Feature => {
    const known = marks.get(at)
    if (known !== undefined) return known
    const mark = featureOf({
      id: at,
      sheet: 'S',
      how: 'hand',
      sigma: 1,
      kind: 'point',
      pixel: pick(PLACES[at]),
    })
    marks.set(at, mark)
    return mark
  }
  const length = (a: Name, b: Name): number =>
    Math.hypot(PLACES[a][0] - PLACES[b][0], PLACES[a][1] - PLACES[b][1])
  const between: Between = (id, a, b) => distanceReference(id, point(a), point(b), exact(length(a, b)), 1)
  const rectangle: Known['rectangle'] = (id, a, b, c, d) =>
    rectangleReference(
      id,
      [point(a), point(b), point(c), point(d)],
      exact(length(a, b)),
      exact(length(b, c)),
      exact(0),
      [1, 1],
    )
  const { sizes: known, closings } = CASES[name]
  const more = kind === 'affine' || kind === 'projective' ? rectangle('X', 'E', 'F', 'G', 'H') : []
  const sizes = [...known({ between, rectangle }), ...more]
  const features = sizes.flatMap((s) => s.equations.flatMap((e) => e.features))
  const view = { mapping: MAPPINGS[kind], frame: viewFrame(features, toRadians(degrees(GRAIN))), draughting }
  return { view, sizes, closings, along: [point('P'), point('Q')], across: [point('P'), point('R')] }
}
