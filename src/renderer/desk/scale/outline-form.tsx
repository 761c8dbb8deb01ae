import { outlineBetween } from '../../../core/job/from-picks/add-view.ts'
import type { View } from '../../../core/job/model/types.ts'
import { useBench } from '../../bench/bench-store.ts'
import { makeEdit } from '../../bench/edits.ts'
import { pickedCorners } from '../../picking/picked-marks.ts'
import { isFlat, OutlineSize } from '../in-hand/outline-size.tsx'
import { abandonTool, showDone } from '../keeping/after-picking.ts'
import { KeepForm } from '../keeping/keep-form.tsx'

/** Gives a view the outline that was picked. */
export function OutlineForm({ view }: { view: View }) {
  const picks = useBench((bench) => bench.picks)
  const page = useBench((bench) => bench.opened?.job.sheets.find(({ id }) => id === view.sheet)?.scan)
  const corners = pickedCorners(picks)
  if (page === undefined || corners === null) return null
  const outline = outlineBetween(...corners, page)
  const keep = async () => {
    if (!(await makeEdit({ do: 'change-view', id: view.id, set: { outline } }))) return
    showDone(picks, { kind: 'view', id: view.id })
  }
  return (
    <KeepForm
      label="New outline"
      keep="Keep this outline"
      onKeep={keep}
      onAbandon={abandonTool}
      disabled={isFlat(outline)}
      startAtKeep
    >
      <h3 className="section-title">New outline of “{view.name}”</h3>
      <OutlineSize outline={outline} />
      <p className="block-soft">Its marks and its scale stay as they are.</p>
    </KeepForm>
  )
}
