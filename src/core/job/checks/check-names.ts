import { RESERVED_NAMES } from '../../formula/formula.ts'
import { reason } from '../../words/core-words.ts'
import type { ListName } from '../model/item-kinds.ts'
import { ADOPTION_RULES } from '../model/schema.ts'
import type { Job } from '../model/types.ts'
import { type CheckContext, type NamedItems, refuse } from './check-context.ts'

const NAME = /^[A-Za-z_][A-Za-z0-9_]*$/

/** Items of a list under what they go by. Refuses an id or a name that is used twice. */
function uniquely<T>(
  job: Job,
  path: readonly PropertyKey[],
  key: 'id' | 'name',
  items: readonly T[],
  nameOf: (item: T) => string,
): Map<string, T> {
  const found = new Map<string, T>()
  items.forEach((item, i) => {
    const name = nameOf(item)
    if (found.has(name)) {
      const first = items.findIndex((other) => nameOf(other) === name) + 1
      refuse(job, [...path, i], reason('job.stands-twice', { first, second: i + 1, key }))
    }
    found.set(name, item)
  })
  return found
}

const idOf = ({ id }: { id: string }): string => id

/** The items of a job by kind, under what they go by. Refuses an id or a name that is used twice. */
export function itemsOf(job: Job): NamedItems {
  const byId = <T extends { id: string }>(list: ListName, items: readonly T[]): Map<string, T> =>
    uniquely(job, [list], 'id', items, idOf)
  return {
    person: byId('people', job.people),
    instrument: byId('instruments', job.instruments),
    sheet: byId('sheets', job.sheets),
    view: byId('views', job.views),
    mark: byId('marks', job.marks),
    dimension: uniquely(job, ['dimensions'], 'name', job.dimensions, ({ name }) => name),
    relation: byId('relations', job.relations),
    note: byId('notes', job.notes),
  }
}

/** Checks the ids within views and dimensions, and the names of dimensions. */
export function checkNames({ job }: CheckContext): void {
  job.views.forEach((view, i) => {
    uniquely(job, ['views', i, 'references'], 'id', view.references, idOf)
  })
  job.dimensions.forEach(({ name, evidence, adopt }, i) => {
    const path = ['dimensions', i]
    if (!NAME.test(name)) refuse(job, path, reason('job.no-name-for-formulas'))
    if (RESERVED_NAMES.has(name) || name in Object.prototype) refuse(job, path, reason('job.name-reserved'))
    const pieces = uniquely(job, [...path, 'evidence'], 'id', evidence, idOf)
    evidence.forEach(({ id }, j) => {
      if (ADOPTION_RULES.has(id)) refuse(job, [...path, 'evidence', j], reason('job.id-is-a-rule'))
    })
    if (adopt !== undefined && !ADOPTION_RULES.has(adopt) && !pieces.has(adopt)) {
      refuse(job, [...path, 'adopt'], reason('job.adopts-nothing', { adopt, rules: [...ADOPTION_RULES] }))
    }
  })
}
