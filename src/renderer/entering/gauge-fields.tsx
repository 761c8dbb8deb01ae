import type { ReactNode } from 'react'
import { GAUGE_STANDARDS } from '../../core/quantity/gauges.ts'
import { GAUGE_NAMES } from '../../core/words/gauge-names.ts'
import { Picker } from '../parts/picker.tsx'
import { TextField } from '../parts/text-field.tsx'
import type { GaugeDraft } from './dimension-draft.ts'

const STANDARDS = GAUGE_STANDARDS.map((id) => ({ id, label: GAUGE_NAMES[id] }))

interface GaugeFieldsProps {
  draft: GaugeDraft
  onWrite: (draft: GaugeDraft) => void
  verdict: ReactNode
  onEnter: () => void
  onEscape: () => void
}

/** The number of a sheet gauge, and of which table. */
export function GaugeFields({ draft, onWrite, verdict, onEnter, onEscape }: GaugeFieldsProps) {
  return (
    <>
      <TextField
        label="Gauge number"
        value={draft.number}
        onChange={(number) => onWrite({ ...draft, number })}
        note="16, or 4/0."
        onEnter={onEnter}
        onEscape={onEscape}
      />
      {verdict}
      <Picker
        label="Of which gauge"
        value={draft.standard}
        options={STANDARDS}
        onChange={(standard) => onWrite({ ...draft, standard })}
      />
    </>
  )
}
