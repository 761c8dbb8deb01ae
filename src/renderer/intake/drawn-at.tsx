import './drawn-at.css'
import { NumberField } from '../parts/number-field.tsx'

interface DrawnAtProps {
  value: number
  onChange: (value: number) => void
  /** What it comes to. */
  words: string
  /** Why that can't be; empty when it can. */
  problem: string
}

/** At which resolution pages that are lines and lettering get their pixels. */
export function DrawnAt({ value, onChange, words, problem }: DrawnAtProps) {
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
      <p className={`drawn-at-words ${problem === '' ? 'field-note' : 'field-error'}`} aria-live="polite">
        {problem === '' ? words : problem}
      </p>
    </div>
  )
}
