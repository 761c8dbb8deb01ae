import { useState } from 'react'
import type { Instrument, Job } from '../../core/job/model/types.ts'
import { makeThen } from '../bench/edits.ts'
import { mint } from '../bench/mint.ts'
import { Button } from '../parts/button.tsx'
import { Picker } from '../parts/picker.tsx'
import { TextField } from '../parts/text-field.tsx'
import { sentenceOf } from '../words/window-words.ts'
import { draftedInstrument, draftOf, type InstrumentDraft } from './instrument-edits.ts'
import { usualInstruments } from './usual-instruments.ts'

interface InstrumentFormProps {
  job: Job
  /** The one that is changed; undefined: a new one. */
  before: Instrument | undefined
  onKept: (id: string) => void
  onCancel: () => void
}

const EMPTY: InstrumentDraft = { name: '', resolution: '', limit: '', note: '' }

/** What an instrument is called and how finely it measures. Enter keeps. */
export function InstrumentForm({ job, before, onKept, onCancel }: InstrumentFormProps) {
  const usual = usualInstruments(job.unit)
  const [kind, setKind] = useState<string | null>(null)
  const [draft, setDraft] = useState(before === undefined ? EMPTY : draftOf(before))
  const [asked, setAsked] = useState(false)
  const [keeping, setKeeping] = useState(false)
  const read = draftedInstrument(job, draft, before, mint)
  const wrong = 'refused' in read ? read.refused : null
  const isEmpty = draft.name.trim() === '' || draft.resolution.trim() === ''
  const write = (part: Partial<InstrumentDraft>) => setDraft((was) => ({ ...was, ...part }))
  const keep = async () => {
    setAsked(true)
    if ('refused' in read || keeping) return
    setKeeping(true)
    const kept = await makeThen((now) => {
      const again = draftedInstrument(now, draft, before, () => read.id)
      return 'refused' in again ? again : { edit: again.edit }
    })
    setKeeping(false)
    if (kept) onKept(read.id)
  }
  const field = { onEnter: () => void keep() }
  return (
    <form
      className="block-words"
      aria-label={before === undefined ? 'New instrument' : `Instrument ${before.name}`}
      onSubmit={(event) => event.preventDefault()}
    >
      {before === undefined && (
        <Picker
          label="Kind"
          value={kind}
          options={usual.map(({ id, name, resolution }) => ({
            id,
            label: name,
            note: `shows ${resolution}`,
          }))}
          placeholder="Caliper, micrometer, rule, tape…"
          onChange={(id) => {
            const was = usual.find((one) => one.id === kind)
            const now = usual.find((one) => one.id === id)
            setKind(id)
            if (now === undefined) return
            // What a person wrote stays.
            if (draft.name.trim() === '' || draft.name === was?.name) write({ name: now.name })
            if (draft.resolution.trim() === '' || draft.resolution === was?.resolution) {
              write({ resolution: now.resolution })
            }
          }}
        />
      )}
      <TextField
        label="Instrument"
        value={draft.name}
        onChange={(name) => write({ name })}
        note="So that it is told from the others: 6 in dial caliper, Micrometer 0–25 mm."
        autoFocus
        {...field}
      />
      <TextField
        label="Smallest step it shows"
        value={draft.resolution}
        onChange={(resolution) => write({ resolution })}
        note={job.unit === 'in' ? '0.001 in, 1/64 in' : '0.02 mm, 0.5 mm'}
        {...field}
      />
      <TextField
        label="Most it may be off by, ±"
        value={draft.limit}
        onChange={(limit) => write({ limit })}
        note="By its maker or its last check. Left empty: nothing is allowed for it."
        {...field}
      />
      <TextField label="Note" value={draft.note} onChange={(note) => write({ note })} {...field} />
      <p className="field-error" role="alert">
        {asked || !isEmpty ? sentenceOf(wrong) : ''}
      </p>
      <div className="block-row dialog-form-foot">
        <Button kind="main" disabled={wrong !== null || keeping} onPress={() => void keep()}>
          Keep the instrument
        </Button>
        <Button onPress={onCancel}>Cancel</Button>
      </div>
    </form>
  )
}
