import { GeometryError } from '../geometry/geometry-error.ts'
import type { ViewMapping } from '../mapping/view-mapping.ts'
import { measureThrough } from '../measuring/propagate-measure.ts'
import type { Draw } from '../uncertainty/draws.ts'
import { reason } from '../words/core-words.ts'
import { CalibrationError } from './calibration-error.ts'
import type { StatedSize } from './reference.ts'
import { isLength } from './stretch.ts'

/**
 * One scale for all: the middle one of stated size over size in pixels, so that a single slip does not move it.
 * @throws CalibrationError naming a reference that has no size on the sheet or none stated
 */
export function startingScale(view: ViewMapping, sizes: readonly StatedSize[], draw?: Draw): number {
  const inPixels = { ...view, draughting: 0 }
  const ratios: number[] = []
  for (const { reference, part, equations } of sizes.filter(isLength)) {
    for (const { features, measure, stated } of equations) {
      const pixels = measuredOn(reference, () =>
        measureThrough(inPixels, view.mapping.start(1), features, measure, draw),
      )
      if (part === 'squareness') continue
      if (!(stated.value > 0 && Number.isFinite(stated.value))) {
        throw new CalibrationError(
          reason('calibration.size-not-above-nothing', { reference, stated: stated.value }),
        )
      }
      ratios.push(stated.value / pixels)
    }
  }
  ratios.sort((a, b) => a - b)
  return ratios[Math.floor(ratios.length / 2)] ?? 1
}

function measuredOn(reference: string, take: () => number): number {
  try {
    return take()
  } catch (error) {
    if (!(error instanceof GeometryError)) throw error
    throw new CalibrationError(
      reason('calibration.no-size-on-the-sheet', { reference, problem: error.reason }),
    )
  }
}
