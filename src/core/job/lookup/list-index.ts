import { ITEM_KINDS, nameOf } from '../model/item-kinds.ts'
import type { ItemKind } from '../model/meaning.ts'
import { Holders } from './holders.ts'

/** What became of one item of a list. */
export interface ItemChange<T extends object = object> {
  readonly name: string
  /** Undefined where it was not there. */
  readonly was: T | undefined
  /** Undefined where it is there no more. */
  readonly is: T | undefined
  /** Where it stands in the list, or did when that was last known. */
  readonly place: number
}

interface Entry<T> {
  item: T
  /** Where it was last seen in the list. */
  place: number
}

/** What stands in one list of a job, by name, and which of it names what. It follows the list from edit to edit. */
export class ListIndex<T extends object = object> {
  readonly kind: ItemKind
  readonly #entries = new Map<string, Entry<T>>()
  /** Worked out when it is first asked for. */
  #holders: Holders<T> | undefined

  /** @param items of a sound job: no two go by the same name */
  constructor(kind: ItemKind, items: readonly T[]) {
    this.kind = kind
    const { key } = ITEM_KINDS[kind]
    for (const [place, item] of items.entries()) this.#entries.set(nameOf(item, key), { item, place })
  }

  get size(): number {
    return this.#entries.size
  }

  get(name: string): T | undefined {
    return this.#entries.get(name)?.item
  }

  /** Where an item stands in the list that this is the index of; -1 where it is not there. */
  placeIn(items: readonly T[], name: string): number {
    const entry = this.#entries.get(name)
    if (entry === undefined) return -1
    if (items[entry.place] !== entry.item) entry.place = items.indexOf(entry.item)
    return entry.place
  }

  /** Which items of the list name what. */
  get holders(): Holders<T> {
    if (this.#holders === undefined) {
      this.#holders = new Holders(this.kind)
      for (const { item } of this.#entries.values()) this.#holders.add(item)
    }
    return this.#holders
  }

  /** Makes this the index of the list as it is after some of its items have changed. */
  follow(changes: readonly ItemChange<T>[]): void {
    for (const { name, was, is, place } of changes) {
      if (was !== undefined) this.#holders?.remove(was)
      if (is === undefined) this.#entries.delete(name)
      else {
        this.#entries.set(name, { item: is, place })
        this.#holders?.add(is)
      }
    }
  }
}
