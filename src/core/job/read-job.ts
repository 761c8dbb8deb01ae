import { reason } from '../words/core-words.ts'
import { quoted } from '../words/quoted.ts'
import { checkJob } from './checks/check-job.ts'
import { migrate } from './migrate.ts'
import { jobSchema } from './model/schema.ts'
import type { Job } from './model/types.ts'
import { JobError } from './text/job-error.ts'
import { DEEPEST_JOB, plainJson } from './text/plain-json.ts'
import { schemaProblem } from './text/schema-problem.ts'

/**
 * The job in a JSON value, checked whole: its form, and that everything it refers to exists and suits.
 * Older versions are migrated. Unknown fields are kept. The value is not changed, and nothing is shared with it.
 *
 * @throws JobError, a sentence with the first problem and where it is; never anything else
 */
export function readJob(json: unknown): Job {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) {
    throw new JobError(reason('job.not-a-job'))
  }
  const fields = plainJson(json, 'The job', DEEPEST_JOB) as Record<string, unknown>
  if (fields['format'] !== 'scantling-job') {
    const format = fields['format'] === undefined ? null : quoted(fields['format'])
    throw new JobError(reason('job.other-format', { format }))
  }
  const current = migrate(fields)
  const parsed = jobSchema.safeParse(current)
  if (!parsed.success)
    throw new JobError(schemaProblem(parsed.error, current, { whole: 'The job', inside: '' }))
  const job: Job = parsed.data
  checkJob(job)
  return job
}
