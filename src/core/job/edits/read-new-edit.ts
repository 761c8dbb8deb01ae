import { reason } from '../../words/core-words.ts'
import type { IdKind } from '../ids/id-form.ts'
import type { Mint } from '../ids/mint-ids.ts'
import { type Counted, type Identity, isCounted, type Numbered, newIdentities } from '../ids/new-identity.ts'
import type { Edit } from '../model/edit-schema.ts'
import type { Job } from '../model/types.ts'
import { JobError } from '../text/job-error.ts'
import { DEEPEST_EDIT, plainJson } from '../text/plain-json.ts'
import { idsOfLabels } from './ids-of-labels.ts'
import { readEdit } from './read-edit.ts'

/** An id that was given to something that an edit adds. */
export interface GivenId {
  /** What stood in its place: `new:a`; what it is, where nothing did: `mark`. */
  as: string
  id: string
}

type Fields = Record<string, unknown>

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** What stands for an id that is to be given, and is the same thing wherever it stands in an edit. */
const STANDS_FOR_NEW = /^new:./

/** Gives ids to what one edit adds, and numbers that go on from one another. */
class NewItems {
  readonly given: GivenId[] = []
  /** What was given to that which stood for something new. */
  readonly standIns = new Map<string, string>()
  readonly #job: Job
  readonly #mint: Mint
  /** What gives the next number beside the things that are there, by what these are. */
  readonly #next = new Map<string, () => Identity>()

  constructor(job: Job, mint: Mint) {
    this.#job = job
    this.#mint = mint
  }

  /** An edit with ids for what it adds. */
  fill(edit: unknown): unknown {
    if (!isFields(edit)) return edit
    const { do: does, item, edits } = edit
    if (does === 'several' && Array.isArray(edits)) {
      return { ...edit, edits: edits.map((one) => this.fill(one)) }
    }
    if (typeof does !== 'string' || !does.startsWith('add-') || !isFields(item)) return edit
    return { ...edit, item: this.#filled(does.slice('add-'.length), edit, item) }
  }

  #filled(kind: string, edit: Fields, item: Fields): Fields {
    switch (kind) {
      case 'person':
      case 'instrument':
        return this.#named(kind, item, () => ({ id: this.#mint(kind) }))
      case 'evidence':
        return this.#evidence(item, edit['dimension'])
      case 'reference': {
        const view = this.#job.views.find(({ id }) => id === edit['view'])
        return this.#counted('reference', item, `references of ${edit['view']}`, view?.references ?? [])
      }
      case 'dimension': {
        const give = (one: unknown) => (isFields(one) ? this.#evidence(one, item['name']) : one)
        return Array.isArray(item['evidence']) ? { ...item, evidence: item['evidence'].map(give) } : item
      }
      case 'view': {
        const view = this.#counted('view', item, 'views', this.#job.views)
        const give = (one: unknown) =>
          isFields(one) ? this.#counted('reference', one, `references of ${view['id']}`, []) : one
        return Array.isArray(view['references'])
          ? { ...view, references: view['references'].map(give) }
          : view
      }
      case 'sheet':
      case 'mark':
      case 'relation':
      case 'note':
        return this.#counted(kind, item, kind, this.#job[`${kind}s`])
      default:
        return item
    }
  }

  #evidence(item: Fields, dimension: unknown): Fields {
    const { basis } = item
    if (typeof basis !== 'string' || !isCounted(basis)) return item
    const others = this.#job.dimensions.find(({ name }) => name === dimension)?.evidence ?? []
    return this.#counted(basis, item, `${basis} evidence of ${dimension}`, others)
  }

  #counted(counted: Counted, item: Fields, scope: string, others: readonly Numbered[]): Fields {
    return this.#named(counted, item, () => {
      const next = this.#next.get(scope) ?? newIdentities(counted, others, this.#mint)
      this.#next.set(scope, next)
      return next()
    })
  }

  #named(what: IdKind | Counted, item: Fields, identity: () => Pick<Identity, 'id'>): Fields {
    const { id: stands, ...rest } = item
    const as = stands === undefined ? what : stands
    if (typeof as !== 'string' || (stands !== undefined && !STANDS_FOR_NEW.test(as))) return item
    if (this.standIns.has(as)) throw new JobError(reason('edit.stands-for-two', { as }))
    const { id, ...number } = identity()
    this.given.push({ as, id })
    if (stands !== undefined) this.standIns.set(as, id)
    return { id, ...number, ...rest }
  }
}

/** A JSON value with some texts put in the place of others. */
function withIds(value: unknown, ids: ReadonlyMap<string, string>): unknown {
  if (typeof value === 'string') return ids.get(value) ?? value
  if (Array.isArray(value)) return value.map((one) => withIds(one, ids))
  if (!isFields(value)) return value
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, withIds(one, ids)]))
}

/**
 * The edit in a JSON value as a person writes it: what it adds without an id gets one. So does what has an id such as
 * `new:a`, which then stands for it everywhere in this edit, so that what is added can be referred to. What is there already
 * can be named by its label as well as by its id.
 *
 * @param job the job before the edit
 * @throws JobError as `readEdit`, for two new things under one such id, and for a label that several things have
 */
export function readNewEdit(json: unknown, job: Job, mint: Mint): { edit: Edit; given: GivenId[] } {
  const items = new NewItems(job, mint)
  const filled = isFields(json)
    ? items.fill(idsOfLabels(plainJson(json, 'The edit', DEEPEST_EDIT), job))
    : json
  const { given, standIns } = items
  return { edit: readEdit(standIns.size === 0 ? filled : withIds(filled, standIns)), given }
}
