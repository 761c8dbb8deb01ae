/** What the desktop host puts into its window as `window.scantling`: messages only. The window reads what comes back. */
export interface MessageBridge {
  /** @param name and args as `REQUESTS` has them; resolves to a `Reply` */
  ask(name: string, args: unknown): Promise<unknown>
  /** Calls back at every `HostEvent`; the function that comes back ends that. */
  listen(heard: (event: unknown) => void): () => void
}

/** The scheme and host of the desktop window's own addresses. */
export const DESKTOP_ORIGIN = 'scantling://bench'

/** What the desktop host's messages are carried on. */
export const DESKTOP_CHANNELS = { ask: 'ask', event: 'event' } as const
