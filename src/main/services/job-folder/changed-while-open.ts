import { isAbsent } from '../files/is-absent.ts'
import { reason, type ServiceReason } from '../words/services-words.ts'
import type { ChangedByAnother } from './history/history-file.ts'
import type { Rescued } from './history/rescue.ts'
import { lookAtFolder } from './mend-job.ts'

/** Why a job can't be edited any more whose folder others changed while it was open, and how it is gone on with. */
export async function changedWhileOpen(
  folder: string,
  { file, path }: { file: ChangedByAnother['file']; path: string },
  rescued: Rescued | null,
): Promise<ServiceReason> {
  if (await isAbsent(folder)) return reason('job-folder.gone', { folder, rescued })
  const parts = { path, folder, rescued, enough: rescued !== null && (await opensWithAll(folder, rescued)) }
  return file === 'history'
    ? reason('history.changed-by-another', parts)
    : reason('job-file.changed-by-another', parts)
}

/** Whether a folder opens as it is, and holds all that was rescued of it. */
async function opensWithAll(folder: string, { path }: Rescued): Promise<boolean> {
  try {
    const { trouble, rescues } = await lookAtFolder(folder)
    return trouble === null && rescues.every((rescue) => rescue.path !== path)
  } catch {
    // What can't even be looked at does not open.
    return false
  }
}
