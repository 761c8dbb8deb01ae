import type { Job } from '../../../../core/job/model/types.ts'
import type { WholeHistory } from './read-whole.ts'

/** Who made the last edit, by name, and when; null where that is not known. */
export const lastEdit = (
  { people }: Pick<Job, 'people'>,
  last: WholeHistory['last'],
): { by: string | null; at: string | null } => ({
  by: last === undefined ? null : (people.find(({ id }) => id === last.by)?.name ?? last.by),
  at: last?.at ?? null,
})
