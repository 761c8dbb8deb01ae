import { RESERVED_NAMES } from '../../formula/formula.ts'
import { ADOPTION_RULES } from '../model/adoption-rules.ts'
import type { Job } from '../model/types.ts'
import { ordinal } from '../text/ordinal.ts'
import { quoted } from '../text/quoted.ts'
import { type CheckContext, refuse } from './check-context.ts'

const NAME = /^[A-Za-z_][A-Za-z0-9_]*$/

type ListName = 'people' | 'instruments' | 'sheets' | 'views' | 'marks' | 'relations' | 'notes'

/** The items of a list of the job under their ids. Refuses an id used twice. */
export function byId<T extends { id: string }>(
  job: Job,
  list: ListName,
  items: readonly T[],
): Map<string, T> {
  return uniquely(job, [list], 'id', items, (item) => item.id)
}

/** The dimensions under their names. Refuses a name used twice. */
export function dimensionsByName(job: Job): Map<string, Job['dimensions'][number]> {
  return uniquely(job, ['dimensions'], 'name', job.dimensions, (dimension) => dimension.name)
}

function uniquely<T>(
  job: Job,
  path: readonly PropertyKey[],
  word: 'id' | 'name',
  items: readonly T[],
  nameOf: (item: T) => string,
): Map<string, T> {
  const found = new Map<string, T>()
  items.forEach((item, i) => {
    const name = nameOf(item)
    if (found.has(name)) {
      const first = items.findIndex((other) => nameOf(other) === name)
      const both = `${ordinal(first + 1)} and ${ordinal(i + 1)}`
      refuse(job, [...path, i], `stands twice in its list, ${both}: give one of them another ${word}`)
    }
    found.set(name, item)
  })
  return found
}

/** Checks the ids within views and dimensions, and the names of dimensions. */
export function checkNames({ job, known }: CheckContext): void {
  job.views.forEach((view, i) => {
    if (!known(view)) uniquely(job, ['views', i, 'references'], 'id', view.references, ({ id }) => id)
  })
  job.dimensions.forEach((dimension, i) => {
    if (known(dimension)) return
    const { name } = dimension
    if (!NAME.test(name)) {
      refuse(
        job,
        ['dimensions', i],
        'has a name that formulas cannot use: write letters a to z, digits and underscores, not starting with a digit',
      )
    }
    if (RESERVED_NAMES.has(name) || name in Object.prototype) {
      refuse(job, ['dimensions', i], 'has a name that already means something in formulas: give it another')
    }
    uniquely(job, ['dimensions', i, 'evidence'], 'id', dimension.evidence, ({ id }) => id)
    dimension.evidence.forEach((evidence, j) => {
      if (ADOPTION_RULES.has(evidence.id)) {
        refuse(
          job,
          ['dimensions', i, 'evidence', j],
          'has the name of a rule of adoption for its id: give it another',
        )
      }
    })
    const { adopt } = dimension
    if (adopt === undefined || ADOPTION_RULES.has(adopt)) return
    if (!dimension.evidence.some(({ id }) => id === adopt)) {
      refuse(
        job,
        ['dimensions', i, 'adopt'],
        `is ${quoted(adopt)}, which is neither a rule (${[...ADOPTION_RULES].join(', ')}) nor the id of evidence for this dimension`,
      )
    }
  })
}
