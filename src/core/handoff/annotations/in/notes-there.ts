import type { Job, Note } from '../../../job/model/types.ts'

/** Who wrote notes that are alike in all else, by when they were written, and whenever that was. */
interface Alike {
  readonly at: Map<string | undefined, Set<string | undefined>>
  readonly ever: Set<string | undefined>
}

const contentOf = ({ sheet, text, about, outline }: Omit<Note, 'id' | 'by'>): string =>
  JSON.stringify([sheet, text, about, outline])

/** The notes of a job, as far as it matters to those that are brought in: what is there, and which ids are free. */
export class NotesThere {
  readonly #alike = new Map<string, Alike>()
  readonly #ids: Set<string>
  /** Every number up to here is taken, counted from how many ids there were when it was found. */
  #lastNumber = 0

  constructor({ notes }: Job) {
    this.#ids = new Set(notes.map(({ id }) => id))
    for (const note of notes) {
      const content = contentOf(note)
      const alike = this.#alike.get(content) ?? { at: new Map(), ever: new Set() }
      this.#alike.set(content, alike)
      alike.ever.add(note.by)
      const then = alike.at.get(note.at)
      if (then === undefined) alike.at.set(note.at, new Set([note.by]))
      else then.add(note.by)
    }
  }

  /**
   * Whether the job has a note that says the same in the same place, as far as what was read says when and by whom.
   * @param by the name of whoever wrote it; undefined where that is not said
   * @param nameOf what a person goes by
   */
  has(note: Omit<Note, 'id' | 'by'>, by: string | undefined, nameOf: (id: string) => string): boolean {
    if (this.#alike.size === 0) return false
    const alike = this.#alike.get(contentOf(note))
    const writers = note.at === undefined ? alike?.ever : alike?.at.get(note.at)
    if (writers === undefined) return false
    return by === undefined || [...writers].some((id) => id !== undefined && nameOf(id) === by)
  }

  /** Takes an id: the one that is wanted, where it is free. */
  takeId(wanted: string | undefined): string {
    const free = wanted !== undefined && wanted !== '' && !this.#ids.has(wanted)
    const id = free ? wanted : this.#freeNumber()
    this.#ids.add(id)
    return id
  }

  #freeNumber(): string {
    let number = Math.max(this.#ids.size, this.#lastNumber) + 1
    while (this.#ids.has(`N${number}`)) number++
    this.#lastNumber = number
    return `N${number}`
  }
}
