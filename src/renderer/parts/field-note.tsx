import './field.css'
import type { ReactNode } from 'react'
import { Text } from 'react-aria-components'

/** What is said under a field; nothing without a note. */
export function FieldNote({ note }: { note: ReactNode }) {
  if (note === undefined) return null
  return (
    <Text slot="description" className="field-note">
      {note}
    </Text>
  )
}
