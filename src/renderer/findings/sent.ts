import { changed, type Difference, differenceFrom } from './difference.ts'

/** A version of something, whole or by what became of the one that was sent before. */
export type Sent<T> = { readonly whole: T } | { readonly change: Difference }

/**
 * Sends one version of something after another. Each is copied on its way; so that what has not changed stays the same
 * one at the other end, and need not be copied, only what has is sent.
 */
export class Sender<T extends object> {
  #last: T | null = null

  send(now: T): Sent<T> {
    const last = this.#last
    this.#last = now
    return last === null ? { whole: now } : { change: differenceFrom(last, now) }
  }

  /** The next is sent whole. */
  anew(): void {
    this.#last = null
  }
}

/** Receives what a `Sender` sends, all of it and in order. */
export class Receiver<T extends object> {
  #last: T | null = null

  /** @throws RangeError for a change of what was never sent whole */
  receive(sent: Sent<T>): T {
    if ('whole' in sent) this.#last = sent.whole
    else if (this.#last === null) throw new RangeError('A change was sent of what was never sent whole.')
    else this.#last = changed(this.#last, sent.change)
    return this.#last
  }

  /** The next must be whole. */
  forget(): void {
    this.#last = null
  }
}
