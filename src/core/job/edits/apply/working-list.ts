import { Holders } from '../../lookup/holders.ts'
import type { ItemChange, ListIndex } from '../../lookup/list-index.ts'
import type { NamedAs } from '../../lookup/mentions.ts'
import { ITEM_KINDS, nameOf } from '../../model/item-kinds.ts'
import type { EditedList } from './edited-list.ts'

/** What an item has become; undefined where it is gone. */
interface Changed<T> {
  readonly item: T | undefined
  /** Where it was last seen. */
  place: number
}

/**
 * One of the lists of a job while an edit is made in it: copied once, however many items change, or changed in place
 * where nobody else has it.
 */
export class WorkingList<T extends object> implements EditedList<T> {
  readonly #index: ListIndex<T>
  readonly #key: 'id' | 'name'
  readonly #before: readonly T[]
  /** The copy; undefined while nothing is changed. */
  #copy: T[] | undefined
  readonly #changed = new Map<string, Changed<T>>()
  /** Those of the changed items that are there still. Worked out when it is first asked for. */
  #holders: Holders<T> | undefined

  /**
   * @param index of the list before the edit, as which it stays
   * @param own whether the list can be changed itself
   */
  constructor(before: readonly T[], index: ListIndex<T>, own: boolean) {
    this.#before = before
    this.#index = index
    // What is one's own is not readonly to oneself.
    this.#copy = own ? (before as T[]) : undefined
    this.#key = ITEM_KINDS[index.kind].key
  }

  /** The list as it is now: that before the edit, where nothing was changed. */
  get items(): readonly T[] {
    return this.#copy ?? this.#before
  }

  get size(): number {
    return this.items.length
  }

  /** The item that goes by a name; undefined where there is none. */
  get(name: string): T | undefined {
    const changed = this.#changed.get(name)
    return changed === undefined ? this.#index.get(name) : changed.item
  }

  has(name: string): boolean {
    return this.get(name) !== undefined
  }

  placeOf(name: string): number {
    const changed = this.#changed.get(name)
    if (changed === undefined) return this.#index.placeIn(this.items, name)
    if (changed.item === undefined) return -1
    if (this.items[changed.place] !== changed.item) changed.place = this.items.indexOf(changed.item)
    return changed.place
  }

  at(place: number): T {
    return this.items[place] as T
  }

  insert(item: T, place: number): void {
    this.#own().splice(place, 0, item)
    this.#set(this.#nameOf(item), item, place)
  }

  replace(place: number, item: T): void {
    this.#gone(place)
    this.#own()[place] = item
    this.#set(this.#nameOf(item), item, place)
  }

  remove(place: number): void {
    this.#gone(place)
    this.#own().splice(place, 1)
  }

  /** The items that name something, in the order of the list. */
  naming(as: NamedAs, name: string): T[] {
    if (this.#holders === undefined) {
      this.#holders = new Holders(this.#index.kind)
      for (const { item } of this.#changed.values()) if (item !== undefined) this.#holders.add(item)
    }
    const found = [...this.#index.holders.of(as, name)].filter(
      (item) => this.get(this.#nameOf(item)) === item,
    )
    const places = new Map(
      [...found, ...this.#holders.of(as, name)].map((item) => [item, this.placeOf(this.#nameOf(item))]),
    )
    return [...places].sort(([, a], [, b]) => a - b).map(([item]) => item)
  }

  /** What has become of the items that are not as they were before the edit. */
  changes(): ItemChange<T>[] {
    return [...this.#changed].flatMap(([name, { item: is, place }]) => {
      const was = this.#index.get(name)
      return was === is ? [] : [{ name, was, is, place }]
    })
  }

  #gone(place: number): void {
    this.#set(this.#nameOf(this.at(place)), undefined, place)
  }

  #set(name: string, item: T | undefined, place: number): void {
    const before = this.#changed.get(name)?.item
    if (before !== undefined) this.#holders?.remove(before)
    if (item !== undefined) this.#holders?.add(item)
    this.#changed.set(name, { item, place })
  }

  #nameOf(item: T): string {
    return nameOf(item, this.#key)
  }

  #own(): T[] {
    this.#copy ??= [...this.#before]
    return this.#copy
  }
}
