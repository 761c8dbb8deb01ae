import type { KeptPictures } from './kept-pictures.ts'

/** Fetches the bytes of one picture. */
export type FetchPicture = (address: string, signal: AbortSignal) => Promise<Blob>

/** A picture that could not be had is asked for again only after this, ms. */
const AGAIN = 5_000

interface Wish<Form> {
  rank: number
  form: Form
  /** Dearest first. */
  addresses: ReadonlySet<string>
}

/** What one part of the window wants: who it is, what goes first, in which form, and the pictures. */
type Want<Form> = readonly [who: string, rank: number, form: Form, addresses: readonly string[]]

interface LoaderOptions<Form> {
  /** So many are fetched at once, in each lane. */
  most?: number
  /** Which lane a picture is fetched in, by the form for which it is fetched; all in one unless said otherwise. */
  lane?: (form: Form) => string
  now?: () => number
}

/**
 * Fetches the pictures that are wanted, a few at a time, makes the forms of them that are wanted, and drops those on the
 * way that nobody wants any more. Each part of the window says what it wants now, dearest first; what an earlier one
 * wants goes first.
 */
export class PictureLoader<Forms extends object> {
  readonly #kept: KeptPictures<Forms>
  readonly #fetch: FetchPicture
  readonly #most: number
  readonly #lane: (form: keyof Forms) => string
  readonly #now: () => number
  readonly #wanted = new Map<string, Wish<keyof Forms>>()
  /** The same, what goes first first. */
  #ranked: readonly Wish<keyof Forms>[] = []
  readonly #underWay = new Map<string, { controller: AbortController; lane: string }>()
  readonly #failed = new Map<string, number>()
  readonly #listeners = new Set<(address: string, form: keyof Forms) => void>()

  constructor(
    kept: KeptPictures<Forms>,
    fetch: FetchPicture,
    { most = 6, lane = () => '', now = () => performance.now() }: LoaderOptions<keyof Forms> = {},
  ) {
    this.#kept = kept
    this.#fetch = fetch
    this.#most = most
    this.#lane = lane
    this.#now = now
  }

  /** Calls back with each form of a picture that is there now; the function that comes back ends that. */
  listen(came: (address: string, form: keyof Forms) => void): () => void {
    this.#listeners.add(came)
    return () => this.#listeners.delete(came)
  }

  /**
   * What one part of the window wants now; an empty list when nothing.
   * @param rank lower goes first
   */
  want(...want: Want<keyof Forms>): void {
    this.wantAll([want])
  }

  /** What several parts want now; another's wishes stay. */
  wantAll(wants: readonly Want<keyof Forms>[]): void {
    for (const [who, rank, form, addresses] of wants) {
      if (addresses.length === 0) this.#wanted.delete(who)
      else this.#wanted.set(who, { rank, form, addresses: new Set(addresses) })
    }
    this.#ranked = [...this.#wanted.values()].sort((a, b) => a.rank - b.rank)
    this.#go()
  }

  #isWanted(address: string): boolean {
    return this.#ranked.some(({ addresses }) => addresses.has(address))
  }

  /** The forms of a picture that are wanted and not there, what goes first first. */
  #missing(address: string): (keyof Forms)[] {
    return this.#ranked
      .filter(({ form, addresses }) => addresses.has(address) && !this.#kept.has(address, form))
      .map(({ form }) => form)
  }

  #go(): void {
    for (const [address, { controller }] of this.#underWay) {
      if (!this.#isWanted(address)) controller.abort()
    }
    for (const { form, addresses } of this.#ranked) {
      const lane = this.#lane(form)
      for (const address of addresses) {
        if (!this.#hasRoom(lane)) break
        if (this.#kept.has(address, form) || this.#underWay.has(address) || this.#isBad(address)) continue
        void this.#load(address, lane)
      }
    }
  }

  #hasRoom(lane: string): boolean {
    let there = 0
    for (const load of this.#underWay.values()) if (load.lane === lane) there++
    return there < this.#most
  }

  #isBad(address: string): boolean {
    const when = this.#failed.get(address)
    return when !== undefined && this.#now() - when < AGAIN
  }

  async #load(address: string, lane: string): Promise<void> {
    const controller = new AbortController()
    this.#underWay.set(address, { controller, lane })
    try {
      const bytes = this.#kept.fetched(address) ?? (await this.#fetch(address, controller.signal))
      await this.#makeWanted(address, bytes)
      this.#failed.delete(address)
    } catch {
      if (!controller.signal.aborted) {
        this.#failed.set(address, this.#now())
        setTimeout(() => this.#go(), AGAIN)
      }
    }
    this.#underWay.delete(address)
    this.#go()
  }

  /** Makes of a picture all forms that are wanted, among them those that come to be wanted meanwhile. */
  async #makeWanted(address: string, bytes: Blob): Promise<void> {
    const done = new Set<keyof Forms>()
    for (;;) {
      const next = this.#missing(address).find((form) => !done.has(form))
      if (next === undefined) return
      done.add(next)
      const made = await this.#kept.make(bytes, next)
      // Told at once: what comes next may already drive it out.
      this.#kept.keep(address, bytes, next, made)
      for (const listener of this.#listeners) listener(address, next)
    }
  }
}
