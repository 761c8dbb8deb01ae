import './list.css'
import { ListBoxItem, Text } from 'react-aria-components'
import { Icon } from './icon.tsx'

/** One entry of a list that opens. */
export function ListOption({ id, label, note }: { id: string; label: string; note?: string }) {
  return (
    <ListBoxItem id={id} textValue={label} className="list-one">
      <span className="list-tick">
        <Icon name="check" />
      </span>
      <Text slot="label">{label}</Text>
      {note !== undefined && (
        <Text slot="description" className="list-note">
          {note}
        </Text>
      )}
    </ListBoxItem>
  )
}
