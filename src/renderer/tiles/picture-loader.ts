import type { DecodedPicture, PictureCache } from './picture-cache.ts'

/** Fetches one picture and decodes it. */
export type Fetch<P> = (address: string, signal: AbortSignal) => Promise<P>

/** A picture that could not be had is asked for again only after this, ms. */
const AGAIN = 5_000

/**
 * Fetches the pictures that are wanted, a few at a time, and drops those on the way that nobody wants any more. Each
 * part of the window says what it wants now, dearest first; what an earlier one wants goes first.
 */
export class PictureLoader<P extends DecodedPicture> {
  readonly #cache: PictureCache<P>
  readonly #fetch: Fetch<P>
  readonly #most: number
  readonly #now: () => number
  readonly #wanted = new Map<string, { rank: number; addresses: readonly string[] }>()
  readonly #underWay = new Map<string, AbortController>()
  readonly #failed = new Map<string, number>()
  readonly #listeners = new Set<(address: string) => void>()

  /** @param most so many are fetched at once */
  constructor(
    cache: PictureCache<P>,
    fetch: Fetch<P>,
    most = 6,
    now: () => number = () => performance.now(),
  ) {
    this.#cache = cache
    this.#fetch = fetch
    this.#most = most
    this.#now = now
  }

  /** Calls back with the address of each picture that has come; the function that comes back ends that. */
  listen(came: (address: string) => void): () => void {
    this.#listeners.add(came)
    return () => this.#listeners.delete(came)
  }

  /**
   * What one part of the window wants now; an empty list when nothing.
   * @param rank lower goes first
   */
  want(who: string, rank: number, addresses: readonly string[]): void {
    if (addresses.length === 0) this.#wanted.delete(who)
    else this.#wanted.set(who, { rank, addresses })
    this.#go()
  }

  #go(): void {
    const wanted = [...this.#wanted.values()].sort((a, b) => a.rank - b.rank).flatMap((w) => w.addresses)
    const still = new Set(wanted)
    for (const [address, controller] of this.#underWay) {
      if (!still.has(address)) controller.abort()
    }
    for (const address of wanted) {
      if (this.#underWay.size >= this.#most) return
      if (this.#cache.has(address) || this.#underWay.has(address) || this.#isBad(address)) continue
      void this.#load(address)
    }
  }

  #isBad(address: string): boolean {
    const when = this.#failed.get(address)
    return when !== undefined && this.#now() - when < AGAIN
  }

  async #load(address: string): Promise<void> {
    const controller = new AbortController()
    let came = false
    this.#underWay.set(address, controller)
    try {
      const picture = await this.#fetch(address, controller.signal)
      this.#failed.delete(address)
      this.#cache.put(address, picture)
      came = true
    } catch {
      if (!controller.signal.aborted) {
        this.#failed.set(address, this.#now())
        setTimeout(() => this.#go(), AGAIN)
      }
    }
    this.#underWay.delete(address)
    if (came) for (const listener of this.#listeners) listener(address)
    this.#go()
  }
}
