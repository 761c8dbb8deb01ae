import { NumberField } from '../../parts/number-field.tsx'

interface OffFieldProps {
  value: number
  /** null: as the figure says, or one. */
  onWrite: (count: number | null) => void
}

/** How many of a dimension or a feature there are. */
export function OffField({ value, onWrite }: OffFieldProps) {
  return (
    <NumberField
      label="Off"
      value={value}
      least={1}
      most={9999}
      step={1}
      onChange={(count) => onWrite(Number.isNaN(count) ? null : count)}
      note="How many of it one assembly has."
    />
  )
}
