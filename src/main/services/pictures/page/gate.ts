/** Something that others wait for. */
export class Gate {
  readonly opened: Promise<void>
  #open: () => void = () => undefined

  constructor() {
    this.opened = new Promise((resolve) => {
      this.#open = resolve
    })
  }

  open(): void {
    this.#open()
  }
}

/** What of one making of a page's pictures others wait for: each is reached, or won't be. */
export class Gates {
  /** It is known how the tiles are kept, or the page is being drawn, which takes a while. */
  readonly known = new Gate()
  /** The picture of the whole is there. */
  readonly overviewed = new Gate()
  /** Those made of it are there as well, and tiles can be asked for. */
  readonly begun = new Gate()

  openAll(): void {
    for (const gate of [this.known, this.overviewed, this.begun]) gate.open()
  }
}
