import { readFile, writeFile } from 'node:fs/promises'
import { fromWebAnnotations } from '../../../core/handoff/annotations/in/from-web-annotations.ts'
import { toWebAnnotations } from '../../../core/handoff/annotations/out/to-web-annotations.ts'
import { readEdit } from '../../../core/job/edits/edit.ts'
import type { Job } from '../../../core/job/model/types.ts'
import { plainText } from '../../../core/words/plain-text.ts'
import { systemReason } from '../../services/files/system-reason.ts'
import { openJob } from '../../services/job-folder/open-job.ts'
import { readJobFolder } from '../../services/job-folder/read-job-folder.ts'
import { ServiceError } from '../../services/service-error.ts'
import { inWords } from '../../services/words/services-words.ts'
import { note, print } from '../output/output.ts'

/** Larger than any file of notes that people write, bytes. */
const MOST = 64 * 1024 ** 2

async function jobIn(folder: string): Promise<Job> {
  const { job, warning } = await readJobFolder(folder)
  if (warning !== undefined) note(inWords(warning))
  return job
}

const count = (n: number): string => (n === 1 ? 'one note' : `${n} notes`)

/** Prints the notes of a job, one a line. @throws ServiceError for a folder that holds no sound job */
export async function listNotes(folder: string): Promise<void> {
  const { notes, people, sheets } = await jobIn(folder)
  if (notes.length === 0) print('No notes.\n')
  for (const { id, sheet, text, by, at, about } of notes) {
    const who = people.find((person) => person.id === by)?.name ?? by
    const title = sheets.find((one) => one.id === sheet)?.title ?? sheet
    const facts = [who, at, title, about].filter((fact) => fact !== undefined).join(', ')
    print(`${plainText(`${id}  ${text.replace(/\s+/g, ' ')}  (${facts})`)}\n`)
  }
}

/**
 * Writes the notes of a job as Web Annotations.
 * @param file a new file; `-`: standard output
 * @throws ServiceError when it can't be written, or is there already
 */
export async function handOnNotes(folder: string, file: string): Promise<void> {
  const job = await jobIn(folder)
  const text = toWebAnnotations(job)
  if (file === '-') {
    print(text)
    return
  }
  try {
    await writeFile(file, text, { flag: 'wx' })
  } catch (error) {
    throw new ServiceError(`The notes can't be written to ${file} because ${systemReason(error)}.`)
  }
  print(`${file}: ${count(job.notes.length)}\n`)
}

async function readText(file: string): Promise<string> {
  try {
    const bytes = await readFile(file)
    if (bytes.length > MOST)
      throw new ServiceError(`${file} is larger than any file of notes should be: it was not read.`)
    return bytes.toString('utf8')
  } catch (error) {
    if (error instanceof ServiceError) throw error
    throw new ServiceError(`The notes in ${file} can't be read because ${systemReason(error)}.`)
  }
}

/**
 * Adds the notes of a file of Web Annotations to a job, as one edit, and says what was left out.
 * @throws ServiceError when the job can't be written or has no such sheet; AnnotationError for a file without any
 */
export async function bringInNotes(
  folder: string,
  file: string,
  { by, sheet }: { by: string; sheet: string | undefined },
): Promise<void> {
  const text = await readText(file)
  const session = await openJob(folder, { mode: 'write' })
  try {
    if (!session.writable) {
      throw new ServiceError(
        `The job ${folder} can't be edited now: ${session.readOnlyBecause === undefined ? '' : inWords(session.readOnlyBecause)}`,
      )
    }
    for (const notice of session.notices) note(inWords(notice))
    if (sheet !== undefined && !session.job.sheets.some(({ id }) => id === sheet)) {
      throw new ServiceError(
        `The job ${folder} has no sheet "${sheet}": name one of ${session.job.sheets.map(({ id }) => id).join(', ')}.`,
      )
    }
    const read = fromWebAnnotations(text, session.job, sheet === undefined ? {} : { sheet })
    for (const remark of read.remarks) note(inWords(remark))
    if (read.notes.length === 0) {
      print('Nothing was brought in.\n')
      return
    }
    const name = `bring in ${count(read.notes.length)}`
    const { n } = await session.edit(readEdit({ do: 'several', name, edits: read.edits }), by)
    print(`ok ${n}: ${name}\n`)
  } finally {
    await session.close()
  }
}
