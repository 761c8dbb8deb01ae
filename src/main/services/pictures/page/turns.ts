/** Lets one at a time do something; of those that wait, whoever came last is next, for that is what is looked at. */
export class Turns {
  #taken = false
  readonly #waiting: (() => void)[] = []

  /**
   * Resolves when it is one's turn, with the function that ends it.
   * @param signal ends the waiting. @returns null when it ended that way: there is no turn to end then
   */
  async take(signal: AbortSignal): Promise<(() => void) | null> {
    if (signal.aborted) return null
    if (this.#taken && !(await this.#wait(signal))) return null
    this.#taken = true
    return () => {
      const next = this.#waiting.pop()
      if (next === undefined) this.#taken = false
      else next()
    }
  }

  /** @returns whether it is one's turn; false when one waits no longer */
  #wait(signal: AbortSignal): Promise<boolean> {
    return new Promise((resolve) => {
      const mine = (): void => {
        signal.removeEventListener('abort', leave)
        resolve(true)
      }
      const leave = (): void => {
        this.#waiting.splice(this.#waiting.indexOf(mine), 1)
        resolve(false)
      }
      this.#waiting.push(mine)
      signal.addEventListener('abort', leave, { once: true })
    })
  }
}
