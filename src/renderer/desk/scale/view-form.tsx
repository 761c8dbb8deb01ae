import { useState } from 'react'
import { parseDrawnScale } from '../../../core/quantity/drawn-scale.ts'
import { ScantlingError } from '../../../core/scantling-error.ts'
import { useBench } from '../../bench/bench-store.ts'
import { choose, putDown } from '../../bench/choose.ts'
import { makeEdit } from '../../bench/edits.ts'
import { TextField } from '../../parts/text-field.tsx'
import { KeepForm } from '../keep-form.tsx'
import { useLastUsed } from '../last-used.ts'
import { outlineOf, viewEdit } from '../pick-edits.ts'
import { toTheSheet } from '../to-the-sheet.ts'

/** Why a stated scale can't be read, in a sentence; empty when it can, or when none is written. */
export function scaleProblem(text: string, unit: 'in' | 'mm'): string {
  if (text.trim() === '') return ''
  try {
    parseDrawnScale(text, unit)
    return ''
  } catch (error) {
    if (error instanceof ScantlingError) return error.message
    throw error
  }
}

/** Names the view whose outline was picked. */
export function ViewForm({ sheet }: { sheet: string }) {
  const job = useBench((bench) => bench.opened?.job)
  const picks = useBench((bench) => bench.picks)
  const [name, setName] = useState('')
  const [scale, setScale] = useState('')
  const page = job?.sheets.find(({ id }) => id === sheet)?.scan
  const outline = page === undefined ? null : outlineOf(picks, page)
  if (job === undefined || outline === null) return null
  const [[left = 0, top = 0] = [], , [right = 0, bottom = 0] = []] = outline
  const flat = right - left < 2 || bottom - top < 2
  const problem = scaleProblem(scale, job.unit)
  const abandon = () => {
    putDown()
    toTheSheet()
  }
  const keep = async () => {
    const { edit, id } = viewEdit(job, {
      sheet,
      name: name.trim(),
      outline,
      ...(scale.trim() === '' ? {} : { drawnScale: parseDrawnScale(scale, job.unit) }),
    })
    if (!(await makeEdit(edit))) return false
    putDown()
    useLastUsed.setState({ view: id })
    choose({ kind: 'view', id })
    toTheSheet()
    return true
  }
  return (
    <KeepForm
      label="Name the view"
      keep="Keep this view"
      onKeep={keep}
      onAbandon={abandon}
      disabled={name.trim() === '' || problem !== '' || flat}
    >
      <h3 className="section-title">Name the view</h3>
      <p className="desk-soft">
        {flat
          ? 'The two corners lie on one line: abandon this and pick corners that are opposite each other.'
          : `${Math.round(right - left)} × ${Math.round(bottom - top)} px, from ${Math.round(left)}, ${Math.round(top)}`}
      </p>
      <TextField
        label="Name"
        value={name}
        onChange={setName}
        autoFocus
        note="As it is lettered under the drawing: Elevation, Plan of foot flange."
      />
      <TextField
        label="Scale as the sheet states it"
        value={scale}
        onChange={setScale}
        error={problem}
        placeholder={job.unit === 'in' ? `3" = 1'-0"` : '1:4'}
        note="Leave it empty if it states none. It is only compared with what is found."
      />
    </KeepForm>
  )
}
