import { useRef, useState } from 'react'
import { goTo } from '../bench/choose.ts'
import { makeEdit } from '../bench/edits.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { Picker } from '../parts/picker.tsx'
import { Section } from '../parts/section.tsx'
import { TextField } from '../parts/text-field.tsx'
import type { CardProps } from './card-props.ts'
import { DraftVerdict } from './draft-verdict.tsx'
import { draftedEvidence, type EvidenceDraft } from './new-evidence.ts'

const BASES = [
  { id: 'printed', label: 'Printed' },
  { id: 'found', label: 'Found' },
  { id: 'derived', label: 'Derived' },
] as const

const LEGIBILITIES = [
  { id: 'clear', label: 'Clear' },
  { id: 'doubtful', label: 'Hard to read' },
] as const

/** No sheet, no instrument. */
const NONE = ''

/** A form for evidence that is not picked on the sheet, read while it is being written. */
export function AddEvidence(card: CardProps) {
  const { job, dimension, unit } = card
  const [open, setOpen] = useState(false)
  /** The keyboard goes into the first field once, and then no more: it is at the bases while they are gone through. */
  const [switched, setSwitched] = useState(false)
  const keeping = useRef(false)
  const [basis, setBasis] = useState<EvidenceDraft['basis']>('printed')
  const [text, setText] = useState('')
  const [readings, setReadings] = useState('')
  const [formula, setFormula] = useState('')
  const [legibility, setLegibility] = useState<'clear' | 'doubtful'>('clear')
  const [sheet, setSheet] = useState<string>(NONE)
  const [instrument, setInstrument] = useState<string>(NONE)

  if (!open) {
    return (
      <Section title="More evidence">
        <div className="dimension-card-actions">
          <Button icon="plus" onPress={() => setOpen(true)}>
            Add evidence
          </Button>
          <Button onPress={() => goTo('pick')} hint="A scaled value comes from marks on the sheet.">
            Pick on the sheet
          </Button>
        </div>
      </Section>
    )
  }
  const draft: EvidenceDraft =
    basis === 'printed'
      ? { basis, text, legibility, sheet: sheet || null }
      : basis === 'found'
        ? { basis, readings, instrument: instrument || null }
        : { basis, formula }
  const drafted = draftedEvidence(draft, dimension, job, unit)
  const ready = drafted !== null && 'edit' in drafted
  const end = () => {
    setOpen(false)
    setSwitched(false)
    setText('')
    setReadings('')
    setFormula('')
  }
  const keep = async () => {
    if (!ready || keeping.current) return
    keeping.current = true
    const kept = await makeEdit(drafted.edit).finally(() => {
      keeping.current = false
    })
    if (kept) end()
  }
  const change = (chosen: EvidenceDraft['basis']) => {
    setBasis(chosen)
    setSwitched(true)
  }
  const keys = { onEnter: () => void keep(), onEscape: end }
  return (
    <Section title="More evidence">
      <Choice label="Basis" hideLabel value={basis} options={BASES} onChange={change} />
      {basis === 'printed' && (
        <>
          <TextField
            label="Figure as it is printed"
            value={text}
            onChange={setText}
            autoFocus={!switched}
            {...keys}
          />
          <Choice label="Legibility" value={legibility} options={LEGIBILITIES} onChange={setLegibility} />
          <Picker
            label="On which sheet"
            value={sheet}
            options={[
              { id: NONE, label: 'Not said' },
              ...job.sheets.map(({ id, title }) => ({ id, label: title })),
            ]}
            onChange={setSheet}
          />
        </>
      )}
      {basis === 'found' && (
        <>
          <TextField
            label="Readings on the original, one a line"
            value={readings}
            onChange={setReadings}
            lines={4}
            autoFocus={!switched}
            onEscape={end}
          />
          <Picker
            label="Instrument"
            value={instrument}
            options={[
              { id: NONE, label: 'Not said' },
              ...job.instruments.map(({ id, name }) => ({ id, label: name })),
            ]}
            onChange={setInstrument}
          />
        </>
      )}
      {basis === 'derived' && (
        <TextField
          label="Formula over the names of dimensions"
          value={formula}
          onChange={setFormula}
          placeholder="pi * (drum_od - sheet_thickness)"
          autoFocus={!switched}
          {...keys}
        />
      )}
      <DraftVerdict drafted={drafted} />
      <div className="dimension-card-actions">
        <Button kind="main" disabled={!ready} onPress={() => void keep()}>
          Keep
        </Button>
        <Button onPress={end}>Abandon</Button>
      </div>
    </Section>
  )
}
