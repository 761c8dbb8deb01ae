import type { Job } from '../model/types.ts'
import type { Edit } from './edit-schema.ts'

/** A job after an edit, and the edit that takes it back. */
export interface Applied {
  job: Job
  inverse: Edit
}

/** The edit that does a certain thing. */
export type EditOf<D extends Edit['do']> = Extract<Edit, { do: D }>
