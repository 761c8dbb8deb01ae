import './choice.css'
import type { CSSProperties, ReactNode } from 'react'
import { Label, Radio, RadioGroup, Text } from 'react-aria-components'
import { Icon } from './icon.tsx'
import type { IconName } from './icon-lines.ts'

interface ChoiceOption<T extends string> {
  id: T
  label: string
  icon?: IconName
  /** The key that chooses it, shown on it. */
  key?: string
}

interface ChoiceProps<T extends string> {
  label: string
  /** null: nothing is chosen yet. */
  value: T | null
  options: readonly ChoiceOption<T>[]
  onChange: (value: T) => void
  hideLabel?: boolean
  /** How many stand beside one another; all of them unless said otherwise. */
  columns?: number
  /** One line on what is chosen. */
  note?: ReactNode
  disabled?: boolean
}

/** One of a few, as segments side by side. */
export function Choice<T extends string>(props: ChoiceProps<T>) {
  const { label, value, options, onChange, hideLabel = false, columns, note } = props
  const pictures = columns !== undefined && options.some(({ icon }) => icon !== undefined)
  return (
    <RadioGroup
      className="choice"
      orientation="horizontal"
      value={value}
      onChange={(id) => {
        const option = options.find((one) => one.id === id)
        if (option !== undefined) onChange(option.id)
      }}
      isDisabled={props.disabled ?? false}
      {...(hideLabel ? { 'aria-label': label } : {})}
    >
      {!hideLabel && <Label className="choice-label">{label}</Label>}
      <div
        className="choice-row"
        data-columns={columns}
        data-pictures={pictures || undefined}
        style={columns === undefined ? undefined : ({ '--choice-columns': columns } as CSSProperties)}
      >
        {options.map((option) => (
          <Radio
            key={option.id}
            value={option.id}
            className="choice-one"
            data-key={option.key}
            {...(option.key === undefined ? {} : { 'aria-keyshortcuts': option.key })}
          >
            {option.icon !== undefined && <Icon name={option.icon} large={pictures} />}
            <span className="choice-words" data-words={option.label}>
              {option.label}
            </span>
          </Radio>
        ))}
      </div>
      {note !== undefined && (
        <Text slot="description" className="choice-note">
          {note}
        </Text>
      )}
    </RadioGroup>
  )
}
