import { useState } from 'react'
import type { Unit } from '../../core/job/model/types.ts'
import { useBench } from '../bench/bench-store.ts'
import { fileIdentity } from '../intake/bring-in.ts'
import { LimitsButton } from '../intake/limits-dialog.tsx'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { ScanFiles } from '../parts/scan-files.tsx'
import { TextField } from '../parts/text-field.tsx'
import { beginWith } from './begin-with.ts'
import { useListedJobs } from './use-jobs.ts'

const UNITS: readonly { id: Unit; label: string }[] = [
  { id: 'in', label: 'Inches' },
  { id: 'mm', label: 'Millimetres' },
]

interface NewJobProps {
  files: readonly File[]
  onAdd: (files: File[]) => void
  onFiles: (files: File[]) => void
}

/** Begins a job with scans of one's own. */
export function NewJob({ files, onAdd, onFiles }: NewJobProps) {
  const person = useBench((bench) => bench.person)
  const [title, setTitle] = useState<string | null>(null)
  const [unit, setUnit] = useState<Unit>('in')
  const [name, setName] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const [asked, setAsked] = useState(false)
  const shownTitle = title ?? titleOfFile(files[0]?.name)
  const shownName = name ?? person
  const missing = {
    title: shownTitle.trim() === '' ? 'Write what the job is called: its folder is named after it.' : '',
    name: shownName.trim() === '' ? 'Write your name: what you do is kept under it.' : '',
  }
  const begin = async () => {
    setAsked(true)
    if (busy || missing.title !== '' || missing.name !== '') return
    setBusy(true)
    let wanted = files
    const left = (file: File) => {
      wanted = wanted.filter((one) => one !== file)
      onFiles([...wanted])
    }
    const job = { title: shownTitle.trim(), unit, by: shownName.trim() }
    await beginWith(files, job, left).finally(() => setBusy(false))
  }
  return (
    <section className="start-way" aria-label="Bring in a scan">
      <h2 className="start-way-title">Bring in a scan</h2>
      {files.length === 0 ? (
        <>
          <p>
            Choose a picture of a drawing, or drop it anywhere on this window: PNG, JPEG, WebP, TIFF or PDF.
            It is copied into a job of its own, and never altered.
          </p>
          <div className="block-row">
            <ScanFiles words="Choose a scan…" kind="main" onFiles={onAdd} />
            <LimitsButton />
          </div>
        </>
      ) : (
        <form
          className="block-words"
          onSubmit={(event) => {
            event.preventDefault()
            void begin()
          }}
        >
          <ul className="start-files">
            {files.map((file) => (
              <li className="start-file" key={fileIdentity(file)}>
                {file.name}
                <Button
                  kind="quiet"
                  icon="close"
                  label={`Leave ${file.name} out`}
                  disabled={busy}
                  onPress={() => onFiles(files.filter((one) => one !== file))}
                />
              </li>
            ))}
          </ul>
          <TextField
            label="What the job is called"
            value={shownTitle}
            onChange={setTitle}
            error={asked ? missing.title : ''}
            note={<WhereItGoes />}
            autoFocus
            disabled={busy}
          />
          <Choice
            label="The drawing is figured in"
            value={unit}
            options={UNITS}
            onChange={setUnit}
            disabled={busy}
          />
          <TextField
            label="Your name"
            value={shownName}
            onChange={setName}
            error={asked ? missing.name : ''}
            disabled={busy}
            note="Kept beside everything you pick and write."
          />
          <div className="block-row">
            <Button kind="main" type="submit" disabled={busy}>
              Begin the job
            </Button>
            <ScanFiles words="Another scan…" onFiles={onAdd} disabled={busy} />
          </div>
        </form>
      )}
    </section>
  )
}

/** In which folder the job is made. */
function WhereItGoes() {
  const listed = useListedJobs()
  return listed === null ? null : <>Its folder is made in {listed.shelf}; you may move it later.</>
}

/** What a scan's file name suggests as a title: `deck_ventilator-2.tif` → `deck ventilator 2`. */
function titleOfFile(name: string | undefined): string {
  return (name ?? '')
    .replace(/\.[^.]*$/, '')
    .replace(/[_-]+/g, ' ')
    .trim()
}
