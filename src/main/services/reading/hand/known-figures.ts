import { figuresKnownOn } from '../../../../core/job/figures/known-figures.ts'
import type { Job } from '../../../../core/job/model/types.ts'
import type { KnownFigure } from '../../../../core/reading/box/known-figure.ts'
import type { PixelSize } from '../../scans/page/pixel-size.ts'
import { canHoldFigure } from '../page/sheet-boxes.ts'

/** Figures that a hand is learned from: more make it hardly better, and each takes a look. */
const MOST = 60

/** The figures of a sheet that a job knows, the newest first, but for those whose boxes can be round none. */
export function knownFigures(job: Job, sheet: string, page: PixelSize): KnownFigure[] {
  return figuresKnownOn(job, sheet, MOST)
    .map(({ box: [x, y, width, height], text }) => ({ box: { x, y, width, height }, text }))
    .filter(({ box }) => canHoldFigure(box, page))
}
