import { countingIds } from '../../../job/ids/counting-ids.ts'
import { mintedFor } from '../../../job/ids/id-form.ts'
import type { Mint } from '../../../job/ids/mint-ids.ts'
import { type Identity, newIdentities } from '../../../job/ids/new-identity.ts'
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
  /** Undefined: a note goes by a number, and by the id that it had wherever that is free. */
  readonly #mint: Mint | undefined
  readonly #next: () => Partial<Identity> & { id: string }

  constructor({ notes }: Job, mint: Mint | undefined) {
    this.#mint = mint
    const counted = countingIds()
    this.#next = mint === undefined ? () => ({ id: counted('note') }) : newIdentities('note', notes, mint)
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

  /**
   * Takes what a note goes by: the id that is wanted, where it is free and can be no other's.
   * @param number that it has under that id
   */
  takeIdentity(wanted: string | undefined, number: number | undefined): Partial<Identity> & { id: string } {
    if (wanted !== undefined && this.#canBe(wanted)) {
      this.#ids.add(wanted)
      return { id: wanted, ...(number === undefined ? {} : { number }) }
    }
    let identity = this.#next()
    while (this.#ids.has(identity.id)) identity = this.#next()
    this.#ids.add(identity.id)
    return identity
  }

  isTaken(id: string): boolean {
    return this.#ids.has(id)
  }

  #canBe(wanted: string): boolean {
    if (wanted === '' || this.#ids.has(wanted)) return false
    // A number may have been given to another note in another copy of the job.
    return this.#mint === undefined || mintedFor(wanted) !== undefined
  }
}
