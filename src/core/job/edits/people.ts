import { labelOf } from '../ids/label.ts'
import type { Mint } from '../ids/mint-ids.ts'
import { inOneCase } from '../ids/thing-called.ts'
import type { Edit } from '../model/edit-schema.ts'
import { jobSchema } from '../model/schema.ts'
import type { Job, Person } from '../model/types.ts'
import { walkMeanings } from '../model/walk-meanings.ts'

const REFERENCES = walkMeanings(jobSchema, 'reference')

const alike = (a: string, b: string): boolean => inOneCase(a) === inOneCase(b)

/** The person of a job that goes by an id or, failing that, by a name, whatever its case. */
export function personOf({ people }: Pick<Job, 'people'>, who: string): Person | undefined {
  return (
    people.find(({ id }) => id === who.trim()) ??
    people.find(({ id }) => alike(id, who)) ??
    people.find(({ name }) => alike(name, who))
  )
}

function peopleIn(edit: Edit): Person[] {
  if (edit.do === 'several') return edit.edits.flatMap(peopleIn)
  return edit.do === 'add-person' ? [edit.item] : []
}

/** Who makes an edit: a person of the job or, where they enter themselves, one whom the edit adds. */
export const makerOf = (job: Job, edit: Edit, who: string): Person | undefined =>
  personOf(job, who) ?? personOf({ people: peopleIn(edit) }, who)

/** The ids of everybody whom something in the job names. */
function named(job: Job): Set<string> {
  const ids = new Set<string>()
  REFERENCES.each(job, (id, { to }) => {
    if (to === 'person') ids.add(id)
  })
  return ids
}

/**
 * The edit that adds a person to a job under an id of their own, and that id. Where nobody was listed so far, those
 * whom the job names by an id alone are listed along with them.
 */
export function addPerson(job: Job, name: string, mint: Mint): { id: string; edit: Edit } {
  const listed = new Set(job.people.map(({ id }) => id))
  const unlisted = [...named(job)].filter((id) => !listed.has(id))
  const known = unlisted.find((id) => alike(id, name))
  const taken = new Set([...listed, ...unlisted])
  let id = known ?? mint('person')
  while (known === undefined && taken.has(id)) id = mint('person')
  const people: Person[] = [
    ...unlisted.filter((other) => other !== id).map((other) => ({ id: other, name: other })),
    { id, name: name.trim() },
  ]
  const edits = people.map((item): Edit => ({ do: 'add-person', item }))
  const [only] = edits
  if (only !== undefined && edits.length === 1) return { id, edit: only }
  return { id, edit: { do: 'several', name: `add people ${people.map(labelOf).join(', ')}`, edits } }
}
