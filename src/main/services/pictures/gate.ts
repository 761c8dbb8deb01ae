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
