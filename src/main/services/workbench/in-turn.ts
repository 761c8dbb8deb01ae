/** Does one thing after another, in the order in which they were asked for. */
export class InTurn {
  #last: Promise<unknown> = Promise.resolve()

  do<T>(work: () => Promise<T>): Promise<T> {
    const mine = this.#last.then(work)
    this.#last = mine.catch(() => undefined)
    return mine
  }

  /** Resolves when all that was asked for until now is done. */
  async idle(): Promise<void> {
    await this.#last
  }
}
