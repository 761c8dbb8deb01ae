import { reason } from '../words/core-words.ts'
import { quoted } from '../words/quoted.ts'
import { checkJob } from './checks/check-job.ts'
import { labelsOfJob } from './ids/labels-of-job.ts'
import { migrate } from './migrate.ts'
import { fitsSchema } from './model/fits-schema.ts'
import { jobSchema } from './model/schema.ts'
import type { Job } from './model/types.ts'
import { listed } from './picks/with-picks.ts'
import { JobError } from './text/job-error.ts'
import { DEEPEST_JOB, plainJson, plainParsed } from './text/plain-json.ts'
import { sayingLabels } from './text/saying-labels.ts'
import { schemaProblem } from './text/schema-problem.ts'

const fitsJob = fitsSchema(jobSchema)

/**
 * The job in a JSON value, checked whole: its form, and that everything it refers to exists and suits.
 * Older versions are migrated, and every mark lists its picks. Unknown fields are kept. The value is not
 * changed, and nothing is shared with it.
 *
 * @throws JobError, a sentence with the first problem and where it is; never anything else
 */
export function readJob(json: unknown): Job {
  return jobIn(json, plainJson)
}

/**
 * As `readJob`, of a value that was just parsed from a text and that nobody else has: the job may share it.
 *
 * @throws JobError
 */
export function readParsedJob(json: unknown): Job {
  return jobIn(json, plainParsed)
}

function jobIn(json: unknown, plain: typeof plainJson): Job {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) {
    throw new JobError(reason('job.not-a-job'))
  }
  const fields = plain(json, 'The job', DEEPEST_JOB) as Record<string, unknown>
  if (fields['format'] !== 'scantling-job') {
    const format = fields['format'] === undefined ? null : quoted(fields['format'])
    throw new JobError(reason('job.other-format', { format }))
  }
  const job = listing(withForm(migrate(fields)))
  sayingLabels(labelsOfJob(job), () => checkJob(job, true))
  return job
}

/** The job with the picks of every mark listed. */
function listing(job: Job): Job {
  const marks = job.marks.map(listed)
  return marks.every((mark, i) => mark === job.marks[i]) ? job : { ...job, marks }
}

function withForm(fields: Record<string, unknown>): Job {
  if (fitsJob(fields)) return fields as Job
  const parsed = jobSchema.safeParse(fields)
  if (parsed.success) return parsed.data
  throw new JobError(schemaProblem(parsed.error, fields, { whole: 'The job', inside: '' }))
}
