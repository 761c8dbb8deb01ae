import { addPerson, type Edit, personOf } from '../../../job/edits/edit.ts'
import type { Mint } from '../../../job/ids/mint-ids.ts'
import type { Job, Note, Person } from '../../../job/model/types.ts'
import { reason } from '../../../words/core-words.ts'
import { AnnotationError } from '../model/annotation-error.ts'
import type { Creator } from './read-annotation.ts'

/** More people than ever wrote notes on one job. */
const MOST_ADDED = 1000

/** The id of a person, and the edit that adds one who is new. */
export interface Writer {
  id: string
  edit?: Edit
}

/** The people of a job, and those who are added to them as notes of theirs are brought in. */
export class Writers {
  readonly #mint: Mint
  #job: Job
  #added = 0
  readonly #ids = new Map<string, string>()
  readonly #names: Map<string, string>

  constructor(job: Job, mint: Mint) {
    this.#job = job
    this.#mint = mint
    this.#names = namesOf(job.people)
  }

  /** What a person goes by: the name, or the id of somebody who is not listed. */
  nameOf = (id: string): string => this.#names.get(id) ?? id

  /**
   * The id of the person who goes by a name, and the edit that adds somebody new to the people of the job.
   * @param notes that were brought in so far
   * @throws AnnotationError when more people are named than a job can have
   */
  idOf(creator: Creator, notes: readonly Note[]): Writer {
    const { people } = this.#job
    const { name, short } = creator
    if (people.length === 0 && name === short) return { id: name }
    const key = JSON.stringify([name, short])
    const before = this.#ids.get(key)
    if (before !== undefined) return { id: before }
    const same = people.find((person) => person.id === short && person.name === name)
    const known = same ?? people.find((person) => person.name === name) ?? personOf(this.#job, name)
    const read = known === undefined ? this.#add(name, notes) : { id: known.id }
    this.#ids.set(key, read.id)
    return read
  }

  #add(name: string, notes: readonly Note[]): Writer {
    this.#added++
    if (this.#added > MOST_ADDED) {
      throw new AnnotationError(reason('annotation.too-many-people', { most: MOST_ADDED }))
    }
    // Whoever is named by an id alone is listed along with the first who is added, so that none is left to look for.
    const named = this.#added === 1 ? { notes: [...this.#job.notes, ...notes] } : NOBODY_NAMED
    const { id, edit } = addPerson({ ...this.#job, ...named }, name, this.#mint)
    const people = [...this.#job.people, ...peopleOf(edit)]
    this.#job = { ...this.#job, people }
    for (const person of peopleOf(edit)) {
      if (!this.#names.has(person.id)) this.#names.set(person.id, person.name)
    }
    return { id, edit }
  }
}

const NOBODY_NAMED = { sheets: [], views: [], marks: [], dimensions: [], relations: [], notes: [] }

const namesOf = (people: readonly Person[]): Map<string, string> =>
  new Map(people.toReversed().map(({ id, name }) => [id, name]))

const peopleOf = (edit: Edit): Person[] => {
  if (edit.do === 'several') return edit.edits.flatMap(peopleOf)
  return edit.do === 'add-person' ? [edit.item] : []
}
