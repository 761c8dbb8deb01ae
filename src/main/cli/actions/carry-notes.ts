import { readFile, writeFile } from 'node:fs/promises'
import { fromWebAnnotations } from '../../../core/handoff/annotations/in/from-web-annotations.ts'
import { toWebAnnotations } from '../../../core/handoff/annotations/out/to-web-annotations.ts'
import { readEdit } from '../../../core/job/edits/edit.ts'
import { itemCalled, labelOf } from '../../../core/job/ids/label.ts'
import { labelIn } from '../../../core/job/ids/labels-of-job.ts'
import type { Job } from '../../../core/job/model/types.ts'
import { nameIn } from '../../../core/words/name-in.ts'
import { plainText } from '../../../core/words/plain-text.ts'
import { systemCause } from '../../services/files/system-reason.ts'
import { mint } from '../../services/ids/mint.ts'
import { openJob } from '../../services/job-folder/open-job.ts'
import { readJobFolder } from '../../services/job-folder/read-job-folder.ts'
import { localMoment } from '../layout/local-moment.ts'
import type { Output } from '../output/output.ts'
import { CliError } from '../words/cli-error.ts'
import { reason } from '../words/cli-words.ts'
import { mustBeWritable } from './must-be-writable.ts'

/** Larger than any file of notes that people write, bytes. */
const MOST = 64 * 1024 ** 2

async function jobIn(output: Output, folder: string): Promise<Job> {
  const { job, warning } = await readJobFolder(folder)
  if (warning !== undefined) output.note(warning)
  return job
}

/** Who did something and when, as far as that is known; of a moment alone, that it was somebody. */
function signed(people: Job['people'], by: string | undefined, at: string | undefined): string[] {
  if (by === undefined && at === undefined) return []
  const who = people.find(({ id }) => id === by)?.name ?? by ?? 'somebody'
  return at === undefined ? [who] : [who, localMoment(at)]
}

const count = (n: number): string => (n === 1 ? 'one note' : `${n} notes`)

/** Prints the notes of a job, one a line. @throws ServiceError for a folder that holds no sound job */
export async function listNotes(output: Output, folder: string): Promise<void> {
  const job = await jobIn(output, folder)
  const { notes, people, sheets } = job
  if (notes.length === 0) output.print('No notes.\n')
  for (const note of notes) {
    const { sheet, text, by, at, about, changedBy, changedAt } = note
    const title = sheets.find((one) => one.id === sheet)?.title ?? sheet
    const subject = about && labelIn(job, about)
    const changed = signed(people, changedBy, changedAt)
    const facts = [
      ...signed(people, by, at),
      ...(changed.length === 0 ? [] : [`changed by ${changed.join(', ')}`]),
      title,
      ...(subject ? [subject] : []),
    ].join(', ')
    output.print(`${plainText(`${labelOf(note)}  ${text.replace(/\s+/g, ' ')}  (${facts})`)}\n`)
  }
}

/**
 * Writes the notes of a job as Web Annotations.
 * @param file a new file; `-`: standard output
 * @throws CliError when it can't be written, or is there already
 */
export async function handOnNotes(output: Output, folder: string, file: string): Promise<void> {
  const job = await jobIn(output, folder)
  const text = toWebAnnotations(job)
  if (file === '-') {
    output.print(text)
    return
  }
  try {
    await writeFile(file, text, { flag: 'wx' })
  } catch (error) {
    throw new CliError(reason('cli.notes-unwritable', { file, why: systemCause(error) }))
  }
  output.print(`${file}: ${count(job.notes.length)}\n`)
}

async function readText(file: string): Promise<string> {
  try {
    const bytes = await readFile(file)
    if (bytes.length > MOST) throw new CliError(reason('cli.notes-too-large', { file }))
    return bytes.toString('utf8')
  } catch (error) {
    if (error instanceof CliError) throw error
    throw new CliError(reason('cli.notes-unreadable', { file, why: systemCause(error) }))
  }
}

/**
 * Adds the notes of a file of Web Annotations to a job, as one edit, and says what was left out.
 * @throws CliError when the job can't be written or has no such sheet; AnnotationError for a file without any
 */
export async function bringInNotes(
  output: Output,
  folder: string,
  file: string,
  { by, sheet, takeOver }: { by: string; sheet?: string; takeOver?: string },
): Promise<void> {
  const text = await readText(file)
  const session = await openJob(folder, { mode: 'write', takeOver, person: by })
  try {
    mustBeWritable(session, folder)
    for (const notice of session.notices) output.note(notice)
    const { job } = session
    const other = sheet === undefined ? undefined : itemCalled(job.sheets, sheet)
    if (sheet !== undefined && other === undefined) {
      const sheets = job.sheets.map(({ id }) => id)
      const problem = reason('cli.no-such-sheet', { folder, sheet, sheets })
      throw new CliError(nameIn(problem, (id) => labelIn(job, id)))
    }
    const read = fromWebAnnotations(text, job, { mint, ...(other === undefined ? {} : { sheet: other.id }) })
    for (const remark of read.remarks) output.note(remark)
    if (read.notes.length === 0) {
      output.print('Nothing was brought in.\n')
      return
    }
    const name = `bring in ${count(read.notes.length)}`
    const { n } = await session.edit(readEdit({ do: 'several', name, edits: read.edits }), by)
    output.print(`ok ${n}: ${name}\n`)
  } finally {
    await session.close()
  }
}
