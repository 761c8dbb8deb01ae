import type { HistoryEntry } from '../../../core/job/history/history-of.ts'
import { KnownNames } from '../../../core/job/history/known-names.ts'
import { partInWords, type Subject, subjectsCalled } from '../../../core/job/history/subject.ts'
import { mintedFor } from '../../../core/job/ids/id-form.ts'
import type { Job } from '../../../core/job/model/types.ts'
import type { Began } from '../../services/job-folder/history-back.ts'
import { readJobFolder } from '../../services/job-folder/read-job-folder.ts'
import { formerSubject, historyOfOne, wholeHistory } from '../../services/job-folder/told-history.ts'
import { historyJson } from '../layout/history-json.ts'
import { historyText } from '../layout/history-text.ts'
import type { Output } from '../output/output.ts'
import { CliError } from '../words/cli-error.ts'
import { inWords, reason } from '../words/cli-words.ts'

/** Entries that are gathered before they are printed, and stand in the same columns. */
const GATHERED = 1000

async function subjectOf(folder: string, job: Job, called: string, names: KnownNames): Promise<Subject> {
  const [first, ...others] = subjectsCalled(job, called, names)
  if (first === undefined) {
    const former = await formerSubject(folder, job, called, names)
    if (former !== null) return former
    throw new CliError(reason('cli.history-of-nothing', { folder, called }))
  }
  if (others.length === 0) return first
  const all = [first, ...others]
  if (first.part !== undefined) {
    const parts = all.map((subject) => partInWords(job, subject) ?? subject.id)
    throw new CliError(reason('cli.history-of-several-parts', { called, parts }))
  }
  const ids = all.map(({ kind, id }) =>
    mintedFor(id) === undefined ? `${kind} ${id}` : `${names.nameOf({ kind, id })}: ${id}`,
  )
  throw new CliError(reason('cli.history-of-several', { called, ids }))
}

/**
 * Prints the history of a job, or of one thing in it, newest first.
 * @throws ServiceError for a folder that holds no sound job, or a history that can't be read; CliError for a name that
 *   nothing has or had, or that several things have
 */
export async function tellHistory(
  output: Output,
  folder: string,
  { of, json }: { of: string | undefined; json: boolean },
): Promise<void> {
  const { job, warning } = await readJobFolder(folder)
  const names = new KnownNames(job)
  const entries =
    of === undefined
      ? wholeHistory(folder, names)
      : historyOfOne(folder, job, await subjectOf(folder, job, of, names), names)
  const written = json ? historyJson(names) : historyText(job, names)
  let gathered: (HistoryEntry | Began)[] = []
  let told = 0
  for await (const entry of entries) {
    told += 1
    gathered.push(entry)
    if (gathered.length < GATHERED) continue
    if (!(await output.stream(written(gathered)))) return
    gathered = []
  }
  await output.stream(written(gathered))
  if (told === 0 && !json) output.say(inWords(reason('cli.history-of-one-unknown')))
  if (warning !== undefined) output.note(warning)
}
