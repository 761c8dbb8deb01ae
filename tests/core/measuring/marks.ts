/** Marks of a made-up sheet, ready to be measured. */

import { distanceReference, type StatedSize } from '../../../src/core/calibration/reference.ts'
import { degrees, toRadians } from '../../../src/core/geometry/angle-units.ts'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import type { MappingKind } from '../../../src/core/job/model/types.ts'
import { MAPPINGS } from '../../../src/core/mapping/mappings.ts'
import { viewFrame } from '../../../src/core/mapping/view-frame.ts'
import type { ViewMapping } from '../../../src/core/mapping/view-mapping.ts'
import { type Feature, featureOf } from '../../../src/core/measuring/features/feature-of-mark.ts'
import { exact, measured } from '../../../src/core/uncertainty/uncertain.ts'

/** Two coordinates of a test, to be taken for pixels; or pixels. */
export type XY = readonly [x: number, y: number]

const at = ([x, y]: XY): Pixel => pixel(x, y)

const base = (id: string, sigma: number) => ({ id, sheet: 'S1', how: 'hand' as const, sigma })

export const pointMark = (id: string, place: XY, sigma = 1): Feature =>
  featureOf({ ...base(id, sigma), kind: 'point', pixel: at(place) })

export const repeatedPoint = (id: string, [first, ...repeats]: readonly [XY, ...XY[]], sigma = 1): Feature =>
  featureOf({ ...base(id, sigma), kind: 'point', pixel: at(first), repeats: repeats.map(at) })

export const lineMark = (id: string, places: readonly XY[], sigma = 1): Feature =>
  featureOf({ ...base(id, sigma), kind: 'line', pixels: places.map(at) })

export const circleMark = (id: string, places: readonly XY[], sigma = 1): Feature =>
  featureOf({ ...base(id, sigma), kind: 'circle', pixels: places.map(at) })

export const pathMark = (id: string, places: readonly XY[], closed: boolean, sigma = 1): Feature =>
  featureOf({ ...base(id, sigma), kind: 'path', pixels: places.map(at), closed })

/** A reference between two new points; `u` of the stated size, mm. */
export const lengthReference = (id: string, p: XY, q: XY, size: number, u = 0, sigma = 1): StatedSize[] =>
  distanceReference(
    id,
    pointMark(`${id}a`, p, sigma),
    pointMark(`${id}b`, q, sigma),
    u === 0 ? exact(size) : measured(size, u, `size stated for figured size ${id}`),
  )

/** The view that holds the references. */
export function viewOf(
  kind: MappingKind,
  sizes: readonly StatedSize[],
  draughting = 0,
  grain = 0,
): ViewMapping {
  const features = sizes.flatMap((s) => s.equations.flatMap((e) => e.features))
  return { mapping: MAPPINGS[kind], frame: viewFrame(features, toRadians(degrees(grain))), draughting }
}
