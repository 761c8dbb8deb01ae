import { useState } from 'react'
import type { Job, Unit } from '../../core/job/model/types.ts'
import type { QuantityKind } from '../../core/quantity/quantity-kind.ts'
import { makeThen } from '../bench/edits.ts'
import { mint, mintForTrial } from '../bench/mint.ts'
import { currentInstrument } from '../instruments/at-hand.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { TextField } from '../parts/text-field.tsx'
import { sentenceOf } from '../words/window-words.ts'
import { type DimensionDraft, draftedDimension, kindWritten } from './dimension-draft.ts'
import { DraftVerdict } from './draft-verdict.tsx'
import { EvidenceFields } from './evidence-fields.tsx'
import { FormulaVerdict } from './formula-verdict.tsx'
import { GaugeFields } from './gauge-fields.tsx'
import { nameOfLabel, nameProblem } from './name-of-label.ts'
import type { DimensionBegun } from './new-dimension-asked.ts'

type Way = DimensionDraft['from']['basis']

const WAYS: readonly { id: Way; label: string }[] = [
  { id: 'printed', label: 'Printed' },
  { id: 'gauge', label: 'By gauge' },
  { id: 'derived', label: 'By formula' },
  { id: 'found', label: 'Measured' },
]

const KINDS: readonly { id: QuantityKind; label: string }[] = [
  { id: 'length', label: 'Length' },
  { id: 'angle', label: 'Angle' },
  { id: 'area', label: 'Area' },
  { id: 'count', label: 'Count' },
]

/** What is written of each way, so that it is there again when a person comes back to it. */
type Drafts = { [W in Way]: Extract<DimensionDraft['from'], { basis: W }> }

const draftsFor = (job: Job, { figure = '', sheet }: DimensionBegun): Drafts => ({
  printed: {
    basis: 'printed',
    text: figure,
    legibility: 'clear',
    sheet: sheet ?? (job.sheets.length === 1 ? (job.sheets[0]?.id ?? null) : null),
  },
  gauge: { basis: 'gauge', number: '', standard: job.gauge ?? 'us-standard-1893' },
  derived: { basis: 'derived', formula: '' },
  found: { basis: 'found', readings: '', instrument: currentInstrument()?.id ?? null },
})

interface NewDimensionFormProps {
  job: Job
  unit: Unit
  begun: DimensionBegun
  onKept: (name: string) => void
  onCancel: () => void
}

/** A dimension that is not picked on the sheet: what it is, and what says how large. Enter keeps. */
export function NewDimensionForm({ job, unit, begun, onKept, onCancel }: NewDimensionFormProps) {
  const [label, setLabel] = useState('')
  const [written, setWritten] = useState<string | null>(null)
  const [kind, setKind] = useState<QuantityKind | null>(null)
  const [way, setWay] = useState<Way>('printed')
  const [drafts, setDrafts] = useState(() => draftsFor(job, begun))
  const [keeping, setKeeping] = useState(false)
  const name = written ?? nameOfLabel(label)
  const problem = name === '' ? null : nameProblem(job, name)
  const { scaled } = begun
  const from = drafts[way]
  const draft: DimensionDraft = { name, label, kind, from, ...(scaled === undefined ? {} : { scaled }) }
  const read = draftedDimension(draft, job, { unit, mint: mintForTrial() })
  const ready = label.trim() !== '' && name !== '' && problem === null && read !== null && 'edit' in read
  const keep = async () => {
    if (!ready || keeping) return
    setKeeping(true)
    const kept = await makeThen((now) => {
      const again = draftedDimension(draft, now, { unit, mint })
      return again !== null && 'edit' in again ? { edit: again.edit } : { edit: read.edit }
    })
    setKeeping(false)
    if (kept) onKept(name)
  }
  const write = (from: DimensionDraft['from']) => setDrafts((was) => ({ ...was, [from.basis]: from }))
  const fields = { onEnter: () => void keep(), onEscape: onCancel }
  const verdict =
    read !== null && 'edit' in read && from.basis === 'derived' ? (
      <FormulaVerdict
        drafted={{ edit: read.edit, understood: '', also: [] }}
        job={job}
        dimension={nameIn(read.edit)}
        id={read.evidence}
        unit={unit}
      />
    ) : (
      <DraftVerdict drafted={read === null ? null : 'edit' in read ? read.understood : read.refused} />
    )
  return (
    <form className="block-words" aria-label="New dimension" onSubmit={(event) => event.preventDefault()}>
      <TextField
        label="What it is"
        value={label}
        onChange={setLabel}
        note="In your own words: Drum, length; Hood, sheet thickness."
        autoFocus
        {...fields}
      />
      <TextField
        label="Name in formulas"
        value={name}
        onChange={setWritten}
        error={sentenceOf(problem)}
        {...fields}
      />
      <Choice label="What says how large it is" value={way} options={WAYS} onChange={setWay} />
      {from.basis === 'gauge' ? (
        <GaugeFields draft={from} onWrite={write} verdict={verdict} {...fields} />
      ) : (
        <EvidenceFields
          draft={from}
          job={job}
          onWrite={write}
          takesKeyboard={false}
          oneLine
          verdict={verdict}
          {...fields}
        />
      )}
      {scaled === undefined ? (
        <Choice label="Kind" value={kind ?? kindWritten(draft, job)} options={KINDS} onChange={setKind} />
      ) : (
        <p className="block-soft">
          It is scaled between its own picks as well. Where the scale is taken from this very figure, that is
          no second witness, and the table counts the two as one.
        </p>
      )}
      <div className="block-row dialog-form-foot">
        <Button kind="main" disabled={!ready || keeping} onPress={() => void keep()}>
          Keep this dimension
        </Button>
        <Button onPress={onCancel}>Cancel</Button>
      </div>
    </form>
  )
}

const nameIn = (edit: { do: string; item?: unknown }): string =>
  typeof edit.item === 'object' && edit.item !== null && 'name' in edit.item ? String(edit.item.name) : ''
