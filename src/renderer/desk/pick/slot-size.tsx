import './slot-size.css'
import type { ReactNode } from 'react'
import type { SlotSize } from '../../../core/job/from-picks/add-slot.ts'
import { DraftVerdict } from '../../entering/draft-verdict.tsx'
import type { Drafted } from '../../entering/new-evidence.ts'
import type { Trial } from '../../findings/computer.ts'
import { Switch } from '../../parts/switch.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { KEEP_WORDS, SLOT_SIZE_WORDS } from './slot-draft.ts'
import { TrialFigure } from './trial-figure.tsx'

interface SlotSizeFieldProps {
  size: SlotSize
  /** What formulas call it; empty before there is a name. */
  name: string
  kept: boolean
  onKeep: (kept: boolean) => void
  printed: string
  onPrint: (printed: string) => void
  /** What the figure is read as. */
  figure: Drafted
  /** What it comes to; null while that is worked out. */
  trial: Trial | null
  /** Whether the figure speaks against what was picked. */
  against: ReactNode
}

/** One size of a slot: what it comes to, whether it is kept, and the figure that is printed for it. */
export function SlotSizeField(props: SlotSizeFieldProps) {
  const { size, name, kept, onKeep, printed, onPrint, figure, trial, against } = props
  const words = SLOT_SIZE_WORDS[size]
  return (
    <div className="slot-size">
      <TrialFigure label={words} trial={trial} />
      <Switch
        label={KEEP_WORDS[size]}
        on={kept}
        onChange={onKeep}
        {...(name === '' ? {} : { note: `In formulas: ${name}` })}
      />
      {kept && <TextField label={`${words}, printed as`} value={printed} onChange={onPrint} />}
      {kept && printed.trim() !== '' && <DraftVerdict drafted={figure} />}
      {kept && against}
    </div>
  )
}
