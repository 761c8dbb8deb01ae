import type { WindowCommand } from '../../contract/host-event.ts'

type Listener = (command: WindowCommand) => void

const listeners = new Set<Listener>()

/** Whoever can carry out a command that came from a menu or a key; the function that comes back ends that. */
export function onCommand(listener: Listener): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

export function heardCommand(command: WindowCommand): void {
  for (const listener of listeners) listener(command)
}
