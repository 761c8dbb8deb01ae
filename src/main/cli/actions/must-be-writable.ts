import type { AnyReason } from '../../../core/words/reason.ts'
import type { JobSession } from '../../services/job-folder/job-session.ts'
import { offeredTakeOver } from '../../services/job-folder/lock/offered-take-over.ts'
import { reason as serviceReason } from '../../services/words/services-words.ts'
import { CliError } from '../words/cli-error.ts'
import { reason } from '../words/cli-words.ts'

/** A job can't be edited: who has it, and how it may be taken over. */
export function notWritable(folder: string, because: AnyReason): CliError {
  const offered = offeredTakeOver(because)
  return new CliError(
    offered === undefined
      ? reason('cli.job-not-writable', { folder, because })
      : reason('cli.job-locked', { folder, because, takeOver: offered.takeOver }),
  )
}

/** @throws CliError when a job that was opened can't be edited */
export function mustBeWritable({ writable, readOnlyBecause }: JobSession, folder: string): void {
  if (writable) return
  throw notWritable(folder, readOnlyBecause ?? serviceReason('job-folder.closed', { folder }))
}
