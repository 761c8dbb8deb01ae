import type { AnyReason } from '../../../core/words/reason.ts'
import { Button } from '../../parts/button.tsx'
import { NumberField } from '../../parts/number-field.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { sentenceOf } from '../../words/window-words.ts'

interface NewDimensionProps {
  label: string
  onLabel: (label: string) => void
  name: string
  onName: (name: string) => void
  /** Why the name can't be had; null when it can. */
  problem: AnyReason | null
  count: number
  onCount: (count: number) => void
  /** Adds to the dimension that has the name; left out when there is none it could be added to. */
  onAddToExisting: (() => void) | undefined
}

/** What a new dimension is called. */
export function NewDimension(props: NewDimensionProps) {
  const { label, onLabel, name, onName, problem, count, onCount, onAddToExisting } = props
  return (
    <>
      <TextField
        label="What it is"
        value={label}
        onChange={onLabel}
        autoFocus
        note="In your own words: Length of drum, Bolt circle."
      />
      <TextField
        label="Name in formulas"
        value={name}
        onChange={onName}
        error={sentenceOf(problem)}
        note="Letters, digits and underscores."
      />
      {onAddToExisting !== undefined && (
        <Button onPress={onAddToExisting}>Add this pick to it as further evidence</Button>
      )}
      <NumberField
        label="How many off"
        value={count}
        least={1}
        most={9999}
        step={1}
        onChange={(value) => onCount(Number.isNaN(value) ? 1 : value)}
      />
    </>
  )
}
