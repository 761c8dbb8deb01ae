import type { Edit } from '../../model/edit-schema.ts'
import type { Job } from '../../model/types.ts'

/** A job after an edit, and the edit that takes it back. */
export interface Applied {
  job: Job
  inverse: Edit
}

/** The edit that does a certain thing. */
export type EditOf<D extends Edit['do']> = Extract<Edit, { do: D }>
