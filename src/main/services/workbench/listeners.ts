import type { HostEvent } from '../../../contract/host-event.ts'

/** Whoever listens to what the workbench tells. */
export class Listeners {
  readonly #listeners = new Set<(event: HostEvent) => void>()
  readonly #log: (line: string) => void

  constructor(log: (line: string) => void) {
    this.#log = log
  }

  /** Calls back at every event; the function that comes back ends that. */
  add(heard: (event: HostEvent) => void): () => void {
    // Wrapped, so that the same function can listen twice and end each by itself.
    const listener = (event: HostEvent): void => heard(event)
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  /** A listener that fails is logged, and the others hear it all the same. */
  tell(event: HostEvent): void {
    for (const listener of [...this.#listeners]) {
      try {
        listener(event)
      } catch (error) {
        this.#log(`a listener failed: ${String(error)}`)
      }
    }
  }

  clear(): void {
    this.#listeners.clear()
  }
}
