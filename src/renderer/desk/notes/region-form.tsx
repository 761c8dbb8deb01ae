import { outlineBetween } from '../../../core/job/from-picks/add-view.ts'
import { useBench } from '../../bench/bench-store.ts'
import { makeEdit } from '../../bench/edits.ts'
import { pickedCorners } from '../../picking/picked-marks.ts'
import { isFlat, OutlineSize } from '../in-hand/outline-size.tsx'
import { abandonTool, showDone } from '../keeping/after-picking.ts'
import { KeepForm } from '../keeping/keep-form.tsx'
import { noteNumber } from './note-words.ts'

/** Gives a note the region that was picked. */
export function RegionForm({ id }: { id: string }) {
  const job = useBench((bench) => bench.opened?.job)
  const picks = useBench((bench) => bench.picks)
  const sheet = useBench((bench) => bench.sheet)
  const note = job?.notes.find((one) => one.id === id)
  const page = job?.sheets.find((one) => one.id === sheet)?.scan
  const corners = pickedCorners(picks)
  if (page === undefined || corners === null || sheet === null) return null
  const outline = outlineBetween(...corners, page)
  const keep = async () => {
    if (
      !(await makeEdit({
        do: 'change-note',
        id,
        set: { outline, ...(sheet === note?.sheet ? {} : { sheet }) },
      }))
    )
      return
    showDone(picks, { kind: 'note', id })
  }
  return (
    <KeepForm
      label="Region"
      keep="Keep this region"
      onKeep={keep}
      onAbandon={abandonTool}
      disabled={isFlat(outline)}
      startAtKeep
    >
      <h3 className="section-title">New region of note {noteNumber(note ?? { id })}</h3>
      <OutlineSize outline={outline} />
      <p className="block-soft">What it says stays as it is.</p>
    </KeepForm>
  )
}
