import type { Edit } from '../../../core/job/edits/edit.ts'
import { ServiceError } from '../service-error.ts'

/**
 * Evidence is withdrawn, never removed: the edits that remove it exist to take back an edit that added it, so only
 * undo and redo may make them.
 * @throws ServiceError for such an edit, also inside several
 */
export function mustNotRemoveEvidence(edit: Edit): void {
  if (edit.do === 'several') edit.edits.forEach(mustNotRemoveEvidence)
  if ('undo' in edit && edit.undo === true) {
    throw new ServiceError(
      'Evidence is never removed by an edit: use "withdraw-evidence" and say why, or undo the edit that added it.',
    )
  }
}
