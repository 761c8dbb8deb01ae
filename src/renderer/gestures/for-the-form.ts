import { useBench } from '../bench/bench-store.ts'
import { isComplete } from '../picking/picks.ts'

const SIGN = /^[\p{L}\p{N}]$/u

/**
 * Whether a letter or digit is meant for the form that asks for a name or a figure: all is picked, and what is written
 * then is no command, wherever the keyboard was left. The letter falls into the field that it is given.
 */
export function isForTheForm({ key, altKey, ctrlKey, metaKey }: KeyboardEvent): boolean {
  // Of a figure that was read, digits and letters choose among what it could be.
  if (useBench.getState().picks.tool.kind === 'figure') return false
  if (altKey || ctrlKey || metaKey || !SIGN.test(key) || !isComplete(useBench.getState().picks)) return false
  const field = document.querySelector<HTMLInputElement>('.keep-form input[type="text"]:not([disabled])')
  field?.focus()
  return field !== null
}
