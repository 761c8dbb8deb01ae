import { app } from 'electron'

/**
 * Job folders that the system hands over. macOS does so before the app is ready where it starts the program for one,
 * so they wait until somebody takes them.
 */
export class FoldersHandedOver {
  readonly #waiting: string[] = []
  #take: (folder: string) => void = (folder) => this.#waiting.push(folder)

  constructor() {
    app.on('open-file', (event, folder) => {
      event.preventDefault()
      this.#take(folder)
    })
  }

  takenBy(take: (folder: string) => void): void {
    this.#take = take
    for (const folder of this.#waiting.splice(0)) take(folder)
  }
}
