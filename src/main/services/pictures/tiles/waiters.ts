/** Milliseconds between two looks for what is waited for. */
const LOOK = 100

interface One<Place, Found> {
  place: Place
  answer: (found: Found | null) => void
}

/**
 * Those who wait for something that is being made, each until it is there. Whoever came last goes first, for that is
 * what is looked at; when there are too many the one that has waited longest gets nothing.
 */
export class Waiters<Place, Found> {
  readonly #find: (place: Place) => Promise<Found | null>
  readonly #waiting: (newestFirst: Place[]) => void
  readonly #most: number
  readonly #ones = new Set<One<Place, Found>>()
  #timer: NodeJS.Timeout | undefined
  #looking: Promise<void> | undefined
  #ended = false

  /**
   * @param find null: not there yet
   * @param waiting called now and then with what is still waited for
   */
  constructor(
    find: (place: Place) => Promise<Found | null>,
    waiting: (newestFirst: Place[]) => void,
    most: number,
  ) {
    this.#find = find
    this.#waiting = waiting
    this.#most = most
  }

  /** @param signal ends the waiting. @returns null when it is waited for no longer */
  async ask(place: Place, signal?: AbortSignal): Promise<Found | null> {
    const found = await this.#find(place)
    if (found !== null || this.#ended || signal?.aborted === true) return found
    return new Promise((resolve) => {
      const one: One<Place, Found> = {
        place,
        answer: (answer) => {
          this.#ones.delete(one)
          resolve(answer)
        },
      }
      this.#ones.add(one)
      signal?.addEventListener('abort', () => one.answer(null), { once: true })
      const [oldest] = this.#ones
      if (this.#ones.size > this.#most) oldest?.answer(null)
      this.#timer ??= setInterval(() => void this.look(), LOOK)
      this.#tell()
    })
  }

  /** Answers those who wait for what is there now. */
  look(): Promise<void> {
    this.#looking ??= this.#lookOnce().finally(() => {
      this.#looking = undefined
    })
    return this.#looking
  }

  /** Nothing more is being made: whoever still waits gets nothing. */
  end(): void {
    this.#ended = true
    for (const one of this.#ones) one.answer(null)
    this.#rest()
  }

  async #lookOnce(): Promise<void> {
    for (const one of this.#newestFirst()) {
      const found = await this.#find(one.place)
      if (found !== null) one.answer(found)
    }
    if (this.#ones.size === 0) this.#rest()
    else this.#tell()
  }

  #rest(): void {
    clearInterval(this.#timer)
    this.#timer = undefined
  }

  #tell(): void {
    this.#waiting(this.#newestFirst().map(({ place }) => place))
  }

  #newestFirst(): One<Place, Found>[] {
    return [...this.#ones].reverse()
  }
}
