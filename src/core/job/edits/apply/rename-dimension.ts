import { renameInFormula, standsIn } from '../../../formula/rename-in-formula.ts'
import { reason } from '../../../words/core-words.ts'
import { jobSchema } from '../../model/schema.ts'
import type { Job, Note } from '../../model/types.ts'
import { walkMeanings } from '../../model/walk-meanings.ts'
import { JobError } from '../../text/job-error.ts'

const FORMULAS = walkMeanings(jobSchema, 'formula')
const MENTIONS = walkMeanings(jobSchema, 'formula', 'subject', 'reference')

/** Refuses a name that formulas mean something else by. */
function mustBeFree(job: Job, name: string): void {
  FORMULAS.each(job, (text, _, { path, holders }) => {
    if (!standsIn(text, name)) return
    const dimension = path[0] === 'dimensions' ? (holders[1] as { name: string }).name : null
    throw new JobError(reason('edit.name-means-something', { name, dimension }))
  })
}

/**
 * A job with a dimension renamed, in formulas, relations and what notes are about as well; and the notes that were
 * about the new name already.
 *
 * @throws JobError when there is no such dimension, or the new name is in use
 */
export function renameDimension(job: Job, from: string, to: string): { job: Job; already: Note[] } {
  if (!job.dimensions.some(({ name }) => name === from)) {
    throw new JobError(reason('edit.no-such-dimension', { name: from }))
  }
  if (from === to) return { job, already: [] }
  if (job.dimensions.some(({ name }) => name === to)) {
    throw new JobError(reason('edit.name-taken', { name: to }))
  }
  mustBeFree(job, to)
  const mentioned = MENTIONS.map(job, (text, meaning) => {
    if (meaning.is === 'formula') return standsIn(text, from) ? renameInFormula(text, from, to) : text
    const names = meaning.is === 'subject' || meaning.to === 'dimension'
    return names && text === from ? to : text
  })
  const dimensions = mentioned.dimensions.map((one) => (one.name === from ? { ...one, name: to } : one))
  return {
    job: { ...mentioned, dimensions },
    already: job.notes.filter(({ about }) => about === to),
  }
}
