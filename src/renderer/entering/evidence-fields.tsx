import type { ReactNode } from 'react'
import type { Job, Unit } from '../../core/job/model/types.ts'
import { takeUpInstrument } from '../instruments/at-hand.ts'
import { askForInstruments } from '../instruments/instruments-asked.ts'
import { Choice } from '../parts/choice.tsx'
import { Picker } from '../parts/picker.tsx'
import { TextField } from '../parts/text-field.tsx'
import type { EvidenceDraft } from './new-evidence.ts'

/** Several readings of one size, as a drawing in that unit would have them. */
const READINGS: Readonly<Record<Unit, string>> = { in: '11 1/2 11 17/32', mm: '140,2 140,25' }

const LEGIBILITIES = [
  { id: 'clear', label: 'Clear' },
  { id: 'doubtful', label: 'Hard to read' },
] as const

/** No sheet, no instrument. */
const NONE = ''
const NOT_SAID = { id: NONE, label: 'Not said' }
const NEW = 'new'
const INSTRUMENT_ACTS = [
  { id: NEW, label: 'New instrument…' },
  { id: 'all', label: 'Change or remove…' },
]

interface EvidenceFieldsProps {
  draft: EvidenceDraft
  job: Job
  onWrite: (draft: EvidenceDraft) => void
  /** Whether the keyboard goes into the first field as it appears. */
  takesKeyboard: boolean
  /** How it is understood: right under what is written, so that nobody keeps it unread. */
  verdict: ReactNode
  onEnter: () => void
  onEscape: () => void
  /** Whether readings stand in one line, so that Enter keeps them. */
  oneLine?: boolean
}

/** The fields of evidence that is being written, by its basis. */
export function EvidenceFields(props: EvidenceFieldsProps) {
  const { draft, job, onWrite, takesKeyboard, verdict, onEnter, onEscape, oneLine = false } = props
  switch (draft.basis) {
    case 'printed':
      return (
        <>
          <TextField
            label="Figure as it is printed"
            value={draft.text}
            onChange={(text) => onWrite({ ...draft, text })}
            autoFocus={takesKeyboard}
            onEnter={onEnter}
            onEscape={onEscape}
          />
          {verdict}
          <Choice
            label="Legibility"
            value={draft.legibility}
            options={LEGIBILITIES}
            onChange={(legibility) => onWrite({ ...draft, legibility })}
          />
          <Picker
            label="On which sheet"
            value={draft.sheet ?? NONE}
            options={[NOT_SAID, ...job.sheets.map(({ id, title }) => ({ id, label: title }))]}
            onChange={(sheet) => onWrite({ ...draft, sheet: sheet === NONE ? null : sheet })}
          />
        </>
      )
    case 'found':
      return (
        <>
          <TextField
            label={oneLine ? 'Readings on the original' : 'Readings on the original, one a line'}
            value={draft.readings}
            onChange={(readings) => onWrite({ ...draft, readings })}
            {...(oneLine
              ? { note: `Several with spaces between: ${READINGS[job.unit]}`, onEnter }
              : { lines: 4 })}
            autoFocus={takesKeyboard}
            onEscape={onEscape}
          />
          {verdict}
          <Picker
            label="Instrument"
            value={draft.instrument ?? NONE}
            options={[
              NOT_SAID,
              ...job.instruments.map(({ id, name }) => ({ id, label: name })),
              ...INSTRUMENT_ACTS,
            ]}
            onChange={(chosen) => {
              const onTake = (instrument: string | null) => {
                onWrite({ ...draft, instrument })
                takeUpInstrument(instrument)
              }
              if (INSTRUMENT_ACTS.some(({ id }) => id === chosen)) {
                askForInstruments({ for: chosen === NEW ? 'new' : 'all', onTake })
              } else onTake(chosen === NONE ? null : chosen)
            }}
          />
        </>
      )
    case 'derived':
      return (
        <>
          <TextField
            label="Formula over the names of dimensions"
            value={draft.formula}
            onChange={(formula) => onWrite({ ...draft, formula })}
            placeholder="pi * (drum_od - sheet_thickness)"
            autoFocus={takesKeyboard}
            onEnter={onEnter}
            onEscape={onEscape}
          />
          {verdict}
        </>
      )
  }
}
