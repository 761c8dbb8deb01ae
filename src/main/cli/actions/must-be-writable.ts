import type { JobSession } from '../../services/job-folder/job-session.ts'
import { offeredTakeOver } from '../../services/job-folder/lock/offered-take-over.ts'
import { reason as serviceReason } from '../../services/words/services-words.ts'
import { CliError } from '../words/cli-error.ts'
import { reason } from '../words/cli-words.ts'

/** @throws CliError when a job that was opened can't be edited, with who has it, and how it may be taken over */
export function mustBeWritable({ writable, readOnlyBecause }: JobSession, folder: string): void {
  if (writable) return
  const because = readOnlyBecause ?? serviceReason('job-folder.closed', { folder })
  const offered = offeredTakeOver(because)
  throw new CliError(
    offered === undefined
      ? reason('cli.job-not-writable', { folder, because })
      : reason('cli.job-locked', { folder, because, takeOver: offered.takeOver }),
  )
}
