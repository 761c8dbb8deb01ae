/** Lets one at a time do something; of those that wait, whoever came last is next, for that is what is looked at. */
export class Turns {
  #taken = false
  readonly #waiting: (() => void)[] = []

  /** Resolves when it is one's turn, with the function that ends it. */
  async take(): Promise<() => void> {
    if (this.#taken) await new Promise<void>((resolve) => this.#waiting.push(resolve))
    this.#taken = true
    return () => {
      const next = this.#waiting.pop()
      if (next === undefined) this.#taken = false
      else next()
    }
  }
}
