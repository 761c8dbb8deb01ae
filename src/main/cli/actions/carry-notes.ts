import { readFile, writeFile } from 'node:fs/promises'
import { fromWebAnnotations } from '../../../core/handoff/annotations/in/from-web-annotations.ts'
import { toWebAnnotations } from '../../../core/handoff/annotations/out/to-web-annotations.ts'
import { readEdit } from '../../../core/job/edits/edit.ts'
import type { Job } from '../../../core/job/model/types.ts'
import { plainText } from '../../../core/words/plain-text.ts'
import { systemCause } from '../../services/files/system-reason.ts'
import { openJob } from '../../services/job-folder/open-job.ts'
import { readJobFolder } from '../../services/job-folder/read-job-folder.ts'
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

const count = (n: number): string => (n === 1 ? 'one note' : `${n} notes`)

/** Prints the notes of a job, one a line. @throws ServiceError for a folder that holds no sound job */
export async function listNotes(output: Output, folder: string): Promise<void> {
  const { notes, people, sheets } = await jobIn(output, folder)
  if (notes.length === 0) output.print('No notes.\n')
  for (const { id, sheet, text, by, at, about } of notes) {
    const who = people.find((person) => person.id === by)?.name ?? by
    const title = sheets.find((one) => one.id === sheet)?.title ?? sheet
    const facts = [who, at, title, about].filter((fact) => fact !== undefined).join(', ')
    output.print(`${plainText(`${id}  ${text.replace(/\s+/g, ' ')}  (${facts})`)}\n`)
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
  const session = await openJob(folder, { mode: 'write', takeOver })
  try {
    mustBeWritable(session, folder)
    for (const notice of session.notices) output.note(notice)
    if (sheet !== undefined && !session.job.sheets.some(({ id }) => id === sheet)) {
      const sheets = session.job.sheets.map(({ id }) => id)
      throw new CliError(reason('cli.no-such-sheet', { folder, sheet, sheets }))
    }
    const read = fromWebAnnotations(text, session.job, sheet === undefined ? {} : { sheet })
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
