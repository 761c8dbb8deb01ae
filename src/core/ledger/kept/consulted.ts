/** Things that are looked up by id or name, by what they are. */
export type Lookups<T> = { readonly [K in keyof T]: (id: string) => T[K] }

/** Something that was looked up, and what it was then. */
export type Consulted<T> = {
  readonly [K in keyof T]: { readonly of: K; readonly id: string; readonly was: T[K] }
}[keyof T]

/** Whether all that something was worked out from is as it was, so that it would come out the same. */
export function stands<T>(consulted: readonly Consulted<T>[], lookups: Lookups<T>): boolean {
  for (const { of, id, was } of consulted) if (lookups[of](id) !== was) return false
  return true
}

/** Looks things up for something that is being worked out, and notes what it was worked out from. */
export class Asking<T> {
  #lookups: Lookups<T> | null
  readonly #consulted: Consulted<T>[] = []

  constructor(lookups: Lookups<T>) {
    this.#lookups = lookups
  }

  /** @throws RangeError once the work is done */
  get<K extends keyof T>(of: K, id: string): T[K] {
    if (this.#lookups === null) throw new RangeError(`Asked for ${String(of)} ${id} after the work was done.`)
    const was = this.#lookups[of](id)
    this.#consulted.push({ of, id, was })
    return was
  }

  /**
   * What was asked for; nothing is looked up after that. Whatever was worked out may hold on to this, and must not hold
   * on to the whole job by it.
   */
  done(): readonly Consulted<T>[] {
    this.#lookups = null
    return this.#consulted
  }
}
