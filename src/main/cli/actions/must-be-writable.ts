import type { JobSession } from '../../services/job-folder/job-session.ts'
import { reason as serviceReason } from '../../services/words/services-words.ts'
import { CliError } from '../words/cli-error.ts'
import { reason } from '../words/cli-words.ts'

/** @throws CliError when a job that was opened can't be edited, with who has it */
export function mustBeWritable({ writable, readOnlyBecause }: JobSession, folder: string): void {
  if (writable) return
  throw new CliError(
    reason('cli.job-not-writable', {
      folder,
      because: readOnlyBecause ?? serviceReason('job-folder.closed', { folder }),
    }),
  )
}
