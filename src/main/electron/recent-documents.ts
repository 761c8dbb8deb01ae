import { app } from 'electron'
import type { HostEvent } from '../../contract/host-event.ts'

/** Tells the system which job folders a person opened, where it keeps a list of its own. */
export class RecentDocuments {
  #chosen: string | undefined

  /** A folder that a person chose; it counts once it is open. */
  chose(folder: string | undefined): void {
    this.#chosen = folder
  }

  hear(event: HostEvent): void {
    if (event.kind !== 'bench' || this.#chosen === undefined) return
    if (event.state.opened !== null) app.addRecentDocument(this.#chosen)
    this.#chosen = undefined
  }
}
