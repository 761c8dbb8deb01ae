import type { Edit } from '../../../core/job/edits/edit.ts'
import { ServiceError } from '../service-error.ts'

/**
 * An edit as plain JSON, so that a journal can hold it.
 * @throws ServiceError for what JSON can't hold: numbers without bounds, rings, anything nested without end
 */
export function plainEdit(edit: Edit): Edit {
  try {
    return JSON.parse(JSON.stringify(edit)) as Edit
  } catch {
    throw new ServiceError('The edit is not plain JSON, so it was not made: nothing was changed.')
  }
}
