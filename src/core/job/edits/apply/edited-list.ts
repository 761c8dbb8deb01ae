import { nameOf } from '../../model/item-kinds.ts'

/** A list that an edit is being made in: it is changed in place, and nobody else has it yet. */
export interface EditedList<T extends object> {
  readonly size: number
  /** Where an item stands; -1 where it does not. */
  placeOf(name: string): number
  at(place: number): T
  insert(item: T, place: number): void
  replace(place: number, item: T): void
  remove(place: number): void
}

/** A list inside an item of a job, which is short. */
export class InnerList<T extends object> implements EditedList<T> {
  readonly items: T[]
  readonly #key: 'id' | 'name'

  /** @param items is copied */
  constructor(items: readonly T[], key: 'id' | 'name') {
    this.items = [...items]
    this.#key = key
  }

  get size(): number {
    return this.items.length
  }

  placeOf(name: string): number {
    return this.items.findIndex((item) => nameOf(item, this.#key) === name)
  }

  at(place: number): T {
    return this.items[place] as T
  }

  insert(item: T, place: number): void {
    this.items.splice(place, 0, item)
  }

  replace(place: number, item: T): void {
    this.items[place] = item
  }

  remove(place: number): void {
    this.items.splice(place, 1)
  }
}
