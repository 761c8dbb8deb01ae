import { useState } from 'react'
import { addNote } from '../../../core/job/from-picks/add-note.ts'
import { outlineBetween } from '../../../core/job/from-picks/add-view.ts'
import { useBench } from '../../bench/bench-store.ts'
import { makeEdit } from '../../bench/edits.ts'
import { mint } from '../../bench/mint.ts'
import { TextField } from '../../parts/text-field.tsx'
import { pickedCorners } from '../../picking/picked-marks.ts'
import { isFlat, OutlineSize } from '../in-hand/outline-size.tsx'
import { abandonTool, showKept } from '../keeping/after-picking.ts'
import { KeepForm } from '../keeping/keep-form.tsx'
import { AboutField } from './about-field.tsx'

/** What is to be said of the region that was picked. */
export function NoteForm({ sheet }: { sheet: string }) {
  const job = useBench((bench) => bench.opened?.job)
  const picks = useBench((bench) => bench.picks)
  const selected = useBench(({ selection }) => (selection?.kind === 'dimension' ? selection.name : null))
  const [text, setText] = useState('')
  const [about, setAbout] = useState(selected)
  const page = job?.sheets.find(({ id }) => id === sheet)?.scan
  const corners = pickedCorners(picks)
  if (job === undefined || page === undefined || corners === null) return null
  const outline = outlineBetween(...corners, page)
  const keep = async () => {
    const said = { sheet, outline, text: text.trim(), ...(about === null ? {} : { about }) }
    const { edit, id } = addNote(job, said, mint)
    if (!(await makeEdit(edit))) return
    showKept(picks, { kind: 'note', id })
  }
  return (
    <KeepForm
      label="Note"
      keep="Keep this note"
      onKeep={keep}
      onAbandon={abandonTool}
      disabled={text.trim() === '' || isFlat(outline)}
    >
      <h3 className="section-title">Note</h3>
      <OutlineSize outline={outline} />
      <TextField
        label="What is to be noted"
        value={text}
        onChange={setText}
        lines={4}
        autoFocus
        note="Your name and the time are put beside it."
      />
      <AboutField job={job} value={about} onChange={setAbout} />
    </KeepForm>
  )
}
