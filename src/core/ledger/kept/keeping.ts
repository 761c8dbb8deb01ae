import { sourcesAt } from '../../uncertainty/source.ts'
import { Asking, type Consulted, type Lookups, stands } from './consulted.ts'

/** Takes what was worked out before where all that it was worked out from is as it was, and works out the rest. */
export class Keeping<V extends object, T> {
  /** What each was worked out from, in the order of the work. */
  readonly consulted = new Map<V, readonly Consulted<T>[]>()
  readonly #lookups: Lookups<T>
  readonly #before: ReadonlyMap<V, readonly Consulted<T>[]> | undefined

  /** @param before what each was worked out from that may still stand */
  constructor(lookups: Lookups<T>, before: ReadonlyMap<V, readonly Consulted<T>[]> | undefined) {
    this.#lookups = lookups
    this.#before = before
  }

  /**
   * @param was what it came to before; undefined where it would not come to the same whatever it was worked out from
   * @param at where its own sources of error stand
   */
  orMade<W extends V>(was: W | undefined, at: number, make: (asking: Asking<T>) => W): W {
    const from = was && this.#before?.get(was)
    if (was !== undefined && from !== undefined && stands(from, this.#lookups)) {
      this.consulted.set(was, from)
      return was
    }
    const asking = new Asking(this.#lookups)
    const made = sourcesAt(at, make, asking)
    this.consulted.set(made, asking.done())
    return made
  }
}
