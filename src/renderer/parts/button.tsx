import './button.css'
import type { ReactNode, Ref } from 'react'
import { Button as AriaButton, Tooltip, TooltipTrigger } from 'react-aria-components'
import { Icon } from './icon.tsx'
import type { IconName } from './icon-lines.ts'

interface ButtonProps {
  /** Words on the button; without them `label` names it. */
  children?: ReactNode
  onPress?: () => void
  /** `main`: what is most likely wanted, one at most in sight. */
  kind?: 'plain' | 'main' | 'quiet' | 'danger'
  icon?: IconName
  /** Its accessible name where that is more than the words on it, or there are none; shown on hovering then. */
  label?: string
  /** A sentence shown on hovering and focusing. */
  hint?: string
  /** The key that does the same, shown on it. */
  shortcut?: string
  disabled?: boolean
  type?: 'button' | 'submit'
  autoFocus?: boolean
  ref?: Ref<HTMLButtonElement>
}

export function Button(props: ButtonProps) {
  const { children, onPress, kind = 'plain', icon, label, hint, shortcut, disabled, ...rest } = props
  const iconOnly = children === undefined
  const button = (
    <AriaButton
      {...rest}
      className="button"
      data-kind={kind}
      data-icon-only={iconOnly || undefined}
      {...(shortcut === undefined ? {} : { 'data-key': shortcut, 'aria-keyshortcuts': shortcut })}
      {...(label === undefined ? {} : { 'aria-label': label })}
      {...(disabled === undefined ? {} : { isDisabled: disabled })}
      {...(onPress === undefined ? {} : { onPress })}
    >
      {icon !== undefined && <Icon name={icon} />}
      {children}
    </AriaButton>
  )
  const shown = hint ?? (iconOnly ? label : undefined)
  if (shown === undefined) return button
  return (
    <TooltipTrigger delay={500}>
      {button}
      <Tooltip className="button-hint" offset={6}>
        {shown}
      </Tooltip>
    </TooltipTrigger>
  )
}
