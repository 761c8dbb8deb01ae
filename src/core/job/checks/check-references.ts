import { reason } from '../../words/core-words.ts'
import { jobSchema } from '../model/schema.ts'
import { walkMeanings } from '../model/walk-meanings.ts'
import { type CheckContext, refuse } from './check-context.ts'

const REFERENCES = walkMeanings(jobSchema, 'reference')

/** Checks that all that is referred to exists. Where nobody is listed, any name stands for a person. */
export function checkReferences({ job, items }: CheckContext): void {
  REFERENCES.each(job, (id, { to }, { path }) => {
    if (items[to].has(id)) return
    if (to !== 'person') refuse(job, path, reason('job.no-such-item', { id, kind: to }))
    if (items.person.size > 0) refuse(job, path, reason('job.not-among-people', { id }))
  })
}
