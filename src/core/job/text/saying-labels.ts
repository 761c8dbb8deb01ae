import { nameIn } from '../../words/name-in.ts'
import type { Labels } from '../ids/labels-of-job.ts'
import { JobError } from './job-error.ts'

/**
 * What an attempt gives; a JobError by which it fails says the labels of what it names.
 * @throws what the attempt throws
 */
export function sayingLabels<T>(labels: Labels, attempt: () => T): T {
  try {
    return attempt()
  } catch (error) {
    if (!(error instanceof JobError)) throw error
    const named = nameIn(error.reason, labels)
    throw named === error.reason ? error : new JobError(named)
  }
}
