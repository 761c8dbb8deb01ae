import './drawn-at.css'
import { NumberField } from '../parts/number-field.tsx'
import { sentenceOf, type WindowReason } from '../words/window-words.ts'

interface DrawnAtProps {
  value: number
  onChange: (value: number) => void
  /** What the largest page comes to; null while there is none. */
  size: WindowReason | null
  /** Why that can't be; null when it can. */
  problem: WindowReason | null
}

/** At which resolution pages that are lines and lettering get their pixels. */
export function DrawnAt({ value, onChange, size, problem }: DrawnAtProps) {
  return (
    <div>
      <NumberField
        label="Draw the pages at"
        suffix="dpi"
        value={value}
        onChange={onChange}
        least={10}
        most={4800}
      />
      <p className={`drawn-at-words ${problem === null ? 'field-note' : 'field-error'}`} aria-live="polite">
        {sentenceOf(problem ?? size)}
      </p>
    </div>
  )
}
