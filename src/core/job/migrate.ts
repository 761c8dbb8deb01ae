import { reason } from '../words/core-words.ts'
import { quoted } from '../words/quoted.ts'
import { JobError } from './text/job-error.ts'

/** The format version that this program writes, and the newest it reads. */
const VERSION = 2

type Fields = Record<string, unknown>

/** Turns a job of one version into a job of the next. It must not change what it is given. */
export type MigrationStep = (job: Fields) => Fields

/** The step from version n to n + 1, under n. */
export type MigrationSteps = ReadonlyMap<number, MigrationStep>

/** Version 2 says more of picks in fields that may be left out; `readJob` writes them where a mark does not. */
const onlySaysMore: MigrationStep = (job) => job

const STEPS: MigrationSteps = new Map([[1, onlySaysMore]])

/**
 * A job of any version up to this one, brought to this version; the job it is given is left as it is.
 *
 * @throws JobError when the version is missing, newer than this one, or has no step that leads on
 */
export function migrate(job: Fields, steps: MigrationSteps = STEPS, newest: number = VERSION): Fields {
  const version = job['version']
  if (version === undefined) throw new JobError(reason('job.no-version'))
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    throw new JobError(reason('job.version-is-none', { version: quoted(version) }))
  }
  if (version > newest) {
    throw new JobError(reason('job.newer', { version, newest }))
  }
  let migrated = job
  for (let n = version; n < newest; n++) {
    const step = steps.get(n)
    if (step === undefined) {
      throw new JobError(reason('job.no-migration', { version, from: n }))
    }
    migrated = { ...step(migrated), version: n + 1 }
  }
  return migrated
}
