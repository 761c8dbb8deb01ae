import './menu.css'
import './list.css'
import { Menu as AriaMenu, Button, MenuItem, MenuTrigger, Popover } from 'react-aria-components'
import { Icon } from './icon.tsx'
import type { IconName } from './icon-lines.ts'

interface MenuProps {
  /** What it is about, for those who hear the window. */
  label: string
  /** Words on the button; none: only its icon shows. */
  words?: string
  icon: IconName
  options: readonly { id: string; label: string }[]
  /** Which option holds now; null: the menu is a list of things to do. */
  value: string | null
  onChange: (id: string) => void
}

/** A button that opens a short list of things to choose from or to do. */
export function Menu({ label, words, icon, options, value, onChange }: MenuProps) {
  return (
    <MenuTrigger>
      <Button className="menu-trigger" aria-label={words === undefined ? label : `${label}: ${words}`}>
        <Icon name={icon} />
        {words !== undefined && <span className="menu-words">{words}</span>}
      </Button>
      <Popover className="list-popover" offset={2}>
        <AriaMenu
          className="list-box"
          aria-label={label}
          selectionMode={value === null ? 'none' : 'single'}
          selectedKeys={value === null ? [] : [value]}
          onAction={(key) => onChange(String(key))}
        >
          {options.map((option) => (
            <MenuItem key={option.id} id={option.id} textValue={option.label} className="list-one">
              <span className="list-tick">
                <Icon name="check" />
              </span>
              <span>{option.label}</span>
            </MenuItem>
          ))}
        </AriaMenu>
      </Popover>
    </MenuTrigger>
  )
}
