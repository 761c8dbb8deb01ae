import type { Job } from '../../core/job/model/types.ts'
import type { AnyReason } from '../../core/words/reason.ts'
import type { Selection } from '../bench/selection.ts'

/** What a caution of a job is about, where that can be chosen; null where it is about all of the job. */
export function placeOfCaution({ parts }: AnyReason, job: Job): Selection | null {
  const { dimension, mark, view } = parts
  if (job.dimensions.some(({ name }) => name === dimension))
    return { kind: 'dimension', name: String(dimension) }
  if (job.marks.some(({ id }) => id === mark)) return { kind: 'mark', id: String(mark) }
  const named = job.views.filter(({ id, name }) => id === view || name === view)
  const [only] = named
  return only !== undefined && named.length === 1 ? { kind: 'view', id: only.id } : null
}
