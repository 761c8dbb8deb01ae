import pLimit, { type LimitFunction } from 'p-limit'

export interface QueueOptions {
  /** So much is done at once. */
  most?: number
  /** Whether what was asked for last is done first, for that is what is looked at. */
  newestFirst?: boolean
}

/** Has work done, so much at a time; the rest waits. */
export class WorkQueue {
  readonly #limit: LimitFunction
  readonly #most: number
  readonly #newestFirst: boolean
  readonly #waiting: (() => Promise<void>)[] = []

  constructor({ most = 1, newestFirst = false }: QueueOptions = {}) {
    this.#limit = pLimit(most)
    this.#most = most
    this.#newestFirst = newestFirst
  }

  /**
   * @param signal ends the waiting; what was begun goes on
   * @throws the reason of the signal, when it ended before its turn; else what the work throws
   */
  do<T>(work: () => Promise<T>, signal?: AbortSignal): Promise<T> {
    return new Promise((resolve, reject) => {
      if (signal?.aborted) return reject(signal.reason)
      const leave = (): void => {
        this.#waiting.splice(this.#waiting.indexOf(mine), 1)
        reject(signal?.reason)
      }
      const mine = async (): Promise<void> => {
        signal?.removeEventListener('abort', leave)
        try {
          resolve(await work())
        } catch (error) {
          reject(error)
        }
      }
      if (this.#limit.activeCount < this.#most) return void this.#limit(mine)
      this.#waiting.push(mine)
      signal?.addEventListener('abort', leave, { once: true })
      // A place in the line is for whoever is next when it comes up, and for nobody when all have left.
      void this.#limit(async () => this.#next()?.())
    })
  }

  #next(): (() => Promise<void>) | undefined {
    return this.#newestFirst ? this.#waiting.pop() : this.#waiting.shift()
  }
}
