import { isCalibrated, scaleSentence } from '../../core/handoff/table/view-lines.ts'
import type { Unit, View } from '../../core/job/model/types.ts'
import type { TableView } from '../../core/ledger/table/table.ts'
import { formatDrawnScale } from '../../core/quantity/format/format-drawn-scale.ts'

interface Titled {
  view: View
  found: TableView | undefined
  /** Of the residual arrows; null when none are shown. */
  factor: number | null
  /** Of the job: how its drawings state their scales. */
  unit: Unit
  chosen: boolean
}

/**
 * What is lettered under the name of a view: by how much residuals are enlarged where any are drawn, since an arrow says
 * nothing without that; and of the view that is chosen the scale found beside the one stated, or that there is none yet.
 */
export function linesUnderTitle({ view, found, factor, unit, chosen }: Titled): string[] {
  const factors = factor === null ? [] : [`misfits drawn × ${factor}`]
  if (!chosen) return factors
  const lines =
    found === undefined
      ? []
      : !isCalibrated(found)
        ? ['not calibrated']
        : scaleSentence(found, unit).flatMap((sentence) => sentence.split(', '))
  if (lines.length === 0 && view.drawnScale !== undefined)
    lines.push(`scale ${formatDrawnScale(view.drawnScale, unit)} stated`)
  return [...lines, ...factors]
}
