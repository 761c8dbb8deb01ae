import type { Job } from '../../../core/job/model/types.ts'
import { type AnyReason, isReason } from '../../../core/words/reason.ts'
import { isAbsent } from '../../services/files/is-absent.ts'
import { lastEdit } from '../../services/job-folder/history/last-edit.ts'
import { type Rescue, rescuesOf } from '../../services/job-folder/history/rescues.ts'
import {
  lookAtFolder,
  type MendFrom,
  mendJob,
  offersOf,
  rescueOffers,
  type Side,
} from '../../services/job-folder/mend-job.ts'
import { ServiceError } from '../../services/service-error.ts'
import { reason as serviceReason } from '../../services/words/services-words.ts'
import type { Output } from '../output/output.ts'
import { inWords, reason } from '../words/cli-words.ts'
import { notWritable } from './must-be-writable.ts'

const countsOf = ({
  title,
  dimensions,
  marks,
}: Job): { title: string; dimensions: number; marks: number } => ({
  title,
  dimensions: dimensions.length,
  marks: marks.length,
})

const sideInWords = (file: string, side: Side): string =>
  inWords(
    'problem' in side
      ? reason('cli.mend-not-from', { file, problem: side.problem })
      : reason('cli.mend-side', { file, n: side.n, ...countsOf(side.job), leaves: side.leaves }),
  )

const rescueInWords = ({ path, tip, job, last, begins }: Rescue): string =>
  inWords(reason('cli.mend-rescue', { path, n: tip.n, begins, ...countsOf(job), ...lastEdit(job, last) }))

/** What was rescued of a job that opens, and how it is gone on from; nothing where nothing was. */
function rescuesInWords(folder: string, rescues: readonly Rescue[]): string {
  if (rescues.length === 0) return ''
  const lines = rescues.map((rescue) => `  ${rescueInWords(rescue)}\n`).join('')
  return `\n${lines}\n${inWords(reason('cli.mend-more', { folder, offers: rescueOffers(rescues) }))}\n`
}

/** What is wrong with a job folder, what each of its two files holds, and what was rescued of it. */
export async function sayWhatIsWrong(folder: string): Promise<string> {
  if (await isAbsent(folder)) {
    const rescues = await rescuesOf(folder, undefined)
    const gone = inWords(
      serviceReason('mend.folder-gone', { folder, rescues: rescues.map(({ path }) => path) }),
    )
    return `${gone}\n${rescues.length === 0 ? '' : `\n${rescues.map((rescue) => `  ${rescueInWords(rescue)}\n`).join('')}`}`
  }
  const look = await lookAtFolder(folder)
  const { trouble, job, history, rescues } = look
  const first = trouble === null ? inWords(reason('cli.nothing-to-mend', { folder })) : inWords(trouble)
  if (trouble === null) return `${first}\n${rescuesInWords(folder, rescues)}`
  const sides = [
    sideInWords('job.json', job),
    sideInWords('history.ndjson', history),
    ...rescues.map(rescueInWords),
  ]
  const how = inWords(reason('cli.mend-how', { folder, offers: offersOf(look).map(({ from }) => from) }))
  return `${first}\n\n${sides.map((side) => `  ${side}\n`).join('')}\n${how}\n`
}

/** Who has the job open, where that is why it was refused. */
function whoHasIt(error: unknown): AnyReason | undefined {
  if (!(error instanceof ServiceError) || error.reason.code !== 'job-folder.read-only') return undefined
  const because = error.reason.parts['because']
  return isReason(because) ? because : undefined
}

/**
 * Lets a job go on from one of its files, or from what was rescued of it.
 * @param how who decides it; the lock that is to be taken over, as the refusal named it
 * @throws CliError when somebody has it open; ServiceError as `mendJob`
 */
export async function mend(
  output: Output,
  folder: string,
  from: MendFrom,
  how: { by: string; takeOver?: string },
): Promise<void> {
  const mended = await mendJob(folder, from, { ...how, now: new Date() }).catch((error: unknown) => {
    const because = whoHasIt(error)
    throw because === undefined ? error : notWritable(folder, because)
  })
  if (mended.notice !== undefined) output.note(mended.notice)
  const { n, kept, rescues, leaves, begins } = mended
  const says = inWords(reason('cli.mended', { from: mended.from, n, kept, leaves, begins }))
  output.print(`${says}\n${rescuesInWords(folder, rescues)}`)
}
