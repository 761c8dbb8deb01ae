import { lookAtFolder, type MendFrom, mendJob, type Side } from '../../services/job-folder/mend-job.ts'
import { inWords, reason } from '../words/cli-words.ts'

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

/** Lets a job go on from one of its files. */
export async function mend(folder: string, from: MendFrom, by: string): Promise<string> {
  const { kept, n } = await mendJob(folder, from, { by, now: new Date() })
  return `${inWords(reason('cli.mended', { from, n, kept }))}\n`
}
