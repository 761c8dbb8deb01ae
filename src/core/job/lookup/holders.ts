import type { ItemKind } from '../model/meaning.ts'
import { eachNamed, type NamedAs } from './mentions.ts'

const NONE: ReadonlySet<never> = new Set()

/** Which items of one list name what. */
export class Holders<T extends object = object> {
  readonly #kind: ItemKind
  readonly #byName = new Map<NamedAs, Map<string, Set<T>>>()

  constructor(kind: ItemKind) {
    this.#kind = kind
  }

  /** The items that name something. */
  of(as: NamedAs, name: string): ReadonlySet<T> {
    return this.#byName.get(as)?.get(name) ?? NONE
  }

  /** All that is named in some way. */
  named(as: NamedAs): Iterable<string> {
    return this.#byName.get(as)?.keys() ?? []
  }

  add(item: T): void {
    eachNamed(this.#kind, item, (as, name) => {
      const names = this.#byName.get(as) ?? new Map<string, Set<T>>()
      this.#byName.set(as, names)
      const holders = names.get(name) ?? new Set<T>()
      names.set(name, holders.add(item))
    })
  }

  remove(item: T): void {
    eachNamed(this.#kind, item, (as, name) => {
      const names = this.#byName.get(as)
      const holders = names?.get(name)
      if (holders?.delete(item) === true && holders.size === 0) names?.delete(name)
    })
  }
}
