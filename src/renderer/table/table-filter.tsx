import './table-filter.css'
import '../parts/list.css'
import type { ReactNode } from 'react'
import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components'
import { Icon } from '../parts/icon.tsx'

interface TableFilterProps {
  label: string
  options: readonly { id: string; word: string; shown: ReactNode }[]
  kept: readonly string[]
  onKeep: (words: readonly string[]) => void
}

/** A small menu of which rows to keep, by one column; none ticked keeps all. */
export function TableFilter({ label, options, kept, onKeep }: TableFilterProps) {
  const keptWords = options.filter(({ id }) => kept.includes(id)).map(({ word }) => word)
  const count = kept.length === 0 ? 'all' : String(kept.length)
  return (
    <MenuTrigger>
      <Button
        className="table-filter"
        data-narrowed={kept.length > 0 || undefined}
        aria-label={[`${label} ${count}`, ...keptWords].join(', ')}
      >
        {`${label} `}
        <span className="table-filter-count">{count}</span>
        <Icon name="down" />
      </Button>
      <Popover className="list-popover" offset={2}>
        <Menu
          className="list-box"
          aria-label={`Rows to keep by ${label.toLowerCase()}`}
          selectionMode="multiple"
          selectedKeys={kept}
          onSelectionChange={(keys) =>
            onKeep(options.map(({ id }) => id).filter((id) => keys === 'all' || keys.has(id)))
          }
        >
          {options.map(({ id, word, shown }) => (
            <MenuItem key={id} id={id} textValue={word} className="list-one">
              <span className="list-tick">
                <Icon name="check" />
              </span>
              {shown}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  )
}
