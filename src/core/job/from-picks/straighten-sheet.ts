import { type Degrees, radians, toDegrees } from '../../geometry/angle-units.ts'
import { fitLine } from '../../geometry/fit-line.ts'
import type { Pixel } from '../../geometry/frames.ts'
import { calledAround, type Edit } from '../edits/edit.ts'
import type { Job, Mark } from '../model/types.ts'

/** A line that is meant to be level or upright. */
export interface LevelLine {
  /** Of its direction in the pixels of the scan, clockwise from right. */
  angle: Degrees
  /** Its standard uncertainty. */
  u: Degrees
  how: Mark['how']
}

/**
 * The direction of a line that was picked, and how sure it is.
 * @param sigma standard uncertainty of each pixel across the line
 * @throws GeometryError when the pixels have no direction
 */
export function levelLine(pixels: readonly Pixel[], sigma: number, how: Mark['how']): LevelLine {
  const { direction, rotation } = fitLine(pixels)
  return {
    angle: toDegrees(radians(Math.atan2(direction[1], direction[0]))),
    u: toDegrees(radians(rotation * sigma)),
    how,
  }
}

const titled = (job: Job, sheet: string): string => calledAround(job)('sheet', sheet)

/** Straightens a sheet, as one edit. The grain of all its views follows. */
export function straightenSheet(job: Job, sheet: string, straight: Degrees): Edit {
  const views = job.views.filter((view) => view.sheet === sheet)
  return {
    do: 'several',
    name: `square up ${titled(job, sheet)}`,
    edits: [
      { do: 'change-sheet', id: sheet, set: { straight } },
      ...views.map(({ id }): Edit => ({ do: 'change-view', id, set: { grain: straight } })),
    ],
  }
}

/** Takes back how a sheet was straightened, as one edit, with the grain of those views that still follow it. */
export function takeBackStraightening(job: Job, sheet: string): Edit {
  const straight = job.sheets.find(({ id }) => id === sheet)?.straight
  const views = job.views.filter((view) => view.sheet === sheet && view.grain === straight)
  return {
    do: 'several',
    name: `take back the squaring up of ${titled(job, sheet)}`,
    edits: [
      { do: 'change-sheet', id: sheet, clear: ['straight'] },
      ...views.map(({ id }): Edit => ({ do: 'change-view', id, clear: ['grain'] })),
    ],
  }
}
