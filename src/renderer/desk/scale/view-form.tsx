import { useState } from 'react'
import { problemOfViewName } from '../../../core/job/checks/view-name.ts'
import { addView, outlineBetween } from '../../../core/job/from-picks/add-view.ts'
import { parseDrawnScale } from '../../../core/quantity/parse/parse-drawn-scale.ts'
import { useBench } from '../../bench/bench-store.ts'
import { makeEdit } from '../../bench/edits.ts'
import { mint } from '../../bench/mint.ts'
import { TextField } from '../../parts/text-field.tsx'
import { pickedCorners } from '../../picking/picked-marks.ts'
import { sentenceOf } from '../../words/window-words.ts'
import { useLastUsed } from '../in-hand/last-used.ts'
import { isFlat, OutlineSize } from '../in-hand/outline-size.tsx'
import { pickAnew, showKept } from '../keeping/after-picking.ts'
import { KeepForm } from '../keeping/keep-form.tsx'
import { scaleProblem } from '../keeping/written-problem.ts'

/** Names the view whose outline was picked. */
export function ViewForm({ sheet }: { sheet: string }) {
  const job = useBench((bench) => bench.opened?.job)
  const picks = useBench((bench) => bench.picks)
  const [name, setName] = useState('')
  const [scale, setScale] = useState('')
  const page = job?.sheets.find(({ id }) => id === sheet)?.scan
  const corners = pickedCorners(picks)
  if (job === undefined || page === undefined || corners === null) return null
  const outline = outlineBetween(...corners, page)
  const problem = scaleProblem(scale, job.unit)
  const taken = problemOfViewName(job, sheet, name)
  const keep = async () => {
    const view = {
      sheet,
      name: name.trim(),
      outline,
      ...(scale.trim() === '' ? {} : { drawnScale: parseDrawnScale(scale, job.unit) }),
    }
    const { edit, id } = addView(job, view, mint)
    if (!(await makeEdit(edit))) return
    useLastUsed.setState({ view: id })
    showKept(picks, { kind: 'view', id })
  }
  return (
    <KeepForm
      label="Name the view"
      keep="Keep this view"
      onKeep={keep}
      onAbandon={() => pickAnew(picks)}
      disabled={name.trim() === '' || taken !== null || problem !== null || isFlat(outline)}
    >
      <h3 className="section-title">Name the view</h3>
      <OutlineSize outline={outline} />
      <TextField
        label="Name"
        value={name}
        onChange={setName}
        autoFocus
        error={sentenceOf(taken)}
        note="As it is lettered under the drawing: Elevation, Plan of foot flange."
      />
      <TextField
        label="Scale as the sheet states it"
        value={scale}
        onChange={setScale}
        error={sentenceOf(problem)}
        placeholder={job.unit === 'in' ? `3" = 1'-0"` : '1:4'}
        note="Leave it empty if it states none. It is only compared with what is found."
      />
    </KeepForm>
  )
}
