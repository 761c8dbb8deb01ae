import { isCalibrated, scaleSentence } from '../../core/handoff/table/view-lines.ts'
import type { Unit, View } from '../../core/job/model/types.ts'
import type { TableView } from '../../core/ledger/table/table.ts'
import { formatDrawnScale } from '../../core/quantity/format/format-drawn-scale.ts'

/**
 * What is lettered under the title of a view: the scale found beside the one stated, or that there is none yet, and
 * by how much residuals are enlarged.
 * @param unit of the job: how its drawings state their scales
 * @param factor of the residual arrows; null when none are shown
 */
export function linesUnderTitle(
  view: View,
  found: TableView | undefined,
  factor: number | null,
  unit: Unit,
): string[] {
  const lines =
    found === undefined
      ? []
      : !isCalibrated(found)
        ? ['not calibrated']
        : scaleSentence(found, unit).flatMap((sentence) => sentence.split(', '))
  if (lines.length === 0 && view.drawnScale !== undefined)
    lines.push(`scale ${formatDrawnScale(view.drawnScale, unit)} stated`)
  if (factor !== null) lines.push(`misfits drawn × ${factor}`)
  return lines
}
