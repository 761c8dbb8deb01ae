/** Marks of a made-up sheet, ready to be measured. */

import { distanceReference, type StatedSize } from '../../../src/core/calibration/reference.ts'
import type { MappingKind } from '../../../src/core/job/model/types.ts'
import { MAPPINGS } from '../../../src/core/mapping/mapping.ts'
import { viewFrame } from '../../../src/core/mapping/view-frame.ts'
import type { ViewMapping } from '../../../src/core/mapping/view-mapping.ts'
import { type Feature, featureOf } from '../../../src/core/measuring/features/feature-of-mark.ts'
import { exact, measured } from '../../../src/core/uncertainty/uncertain.ts'

export type XY = [x: number, y: number]

const base = (id: string, sigma: number) => ({ id, sheet: 'S1', how: 'hand' as const, sigma })

export const pointMark = (id: string, pixel: XY, sigma = 1): Feature =>
  featureOf({ ...base(id, sigma), kind: 'point', pixel })

export const repeatedPoint = (id: string, [pixel, ...repeats]: [XY, ...XY[]], sigma = 1): Feature =>
  featureOf({ ...base(id, sigma), kind: 'point', pixel, repeats })

export const lineMark = (id: string, pixels: XY[], sigma = 1): Feature =>
  featureOf({ ...base(id, sigma), kind: 'line', pixels })

export const circleMark = (id: string, pixels: XY[], sigma = 1): Feature =>
  featureOf({ ...base(id, sigma), kind: 'circle', pixels })

export const pathMark = (id: string, pixels: XY[], closed: boolean, sigma = 1): Feature =>
  featureOf({ ...base(id, sigma), kind: 'path', pixels, closed })

/** A reference between two new points; `u` of the stated size, mm. */
export const lengthReference = (id: string, p: XY, q: XY, size: number, u = 0, sigma = 1): StatedSize[] =>
  distanceReference(
    id,
    pointMark(`${id}a`, p, sigma),
    pointMark(`${id}b`, q, sigma),
    u === 0 ? exact(size) : measured(size, u, `stated size of reference ${id}`),
  )

/** The view that holds the references. */
export function viewOf(
  kind: MappingKind,
  sizes: readonly StatedSize[],
  draughting = 0,
  grain = 0,
): ViewMapping {
  const features = sizes.flatMap((s) => s.equations.flatMap((e) => e.features))
  return { mapping: MAPPINGS[kind], frame: viewFrame(features, grain), draughting }
}
