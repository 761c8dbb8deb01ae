import { type AnyReason, isReason } from '../../../core/words/reason.ts'
import { lookAtFolder, type MendFrom, mendJob, type Side } from '../../services/job-folder/mend-job.ts'
import { ServiceError } from '../../services/service-error.ts'
import { inWords, reason } from '../words/cli-words.ts'
import { notWritable } from './must-be-writable.ts'

const sideInWords = (file: string, side: Side): string => {
  if ('problem' in side) return inWords(reason('cli.mend-not-from', { file, problem: side.problem }))
  const { n, job } = side
  const { dimensions, marks } = job
  return inWords(
    reason('cli.mend-side', {
      file,
      n,
      dimensions: dimensions.length,
      marks: marks.length,
      title: job.title,
    }),
  )
}

/** What is wrong with a job folder, and what each of its two files holds. */
export async function sayWhatIsWrong(folder: string): Promise<string> {
  const { trouble, job, history } = await lookAtFolder(folder)
  const first = trouble === null ? inWords(reason('cli.nothing-to-mend', { folder })) : inWords(trouble)
  if (trouble === null) return `${first}\n`
  return `${first}\n\n  ${sideInWords('job.json', job)}\n  ${sideInWords('history.ndjson', history)}\n\n${inWords(reason('cli.mend-how', { folder }))}\n`
}

/** Who has the job open, where that is why it was refused. */
function whoHasIt(error: unknown): AnyReason | undefined {
  if (!(error instanceof ServiceError) || error.reason.code !== 'job-folder.read-only') return undefined
  const because = error.reason.parts['because']
  return isReason(because) ? because : undefined
}

/**
 * Lets a job go on from one of its files.
 * @param how who decides it; the lock that is to be taken over, as the refusal named it
 * @throws CliError when somebody has it open; ServiceError as `mendJob`
 */
export async function mend(
  folder: string,
  from: MendFrom,
  how: { by: string; takeOver?: string },
): Promise<string> {
  const { kept, n } = await mendJob(folder, from, { ...how, now: new Date() }).catch((error: unknown) => {
    const because = whoHasIt(error)
    throw because === undefined ? error : notWritable(folder, because)
  })
  return `${inWords(reason('cli.mended', { from, n, kept }))}\n`
}
