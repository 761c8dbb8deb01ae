import { type FileHandle, open } from 'node:fs/promises'
import { createInterface } from 'node:readline'
import { readEdit } from '../../../core/job/edits/edit.ts'
import { ScantlingError } from '../../../core/words/scantling-error.ts'
import { systemReason } from '../../services/files/system-reason.ts'
import type { Acknowledged, JobSession } from '../../services/job-folder/job-session.ts'
import { openJob } from '../../services/job-folder/open-job.ts'
import { ServiceError } from '../../services/service-error.ts'
import { inWords } from '../../services/words/services-words.ts'
import { note, print } from '../output/output.ts'

const STOPPED_BY_SIGNAL = 130

async function openEdits(file: string): Promise<FileHandle> {
  try {
    const handle = await open(file, 'r')
    if ((await handle.stat()).isDirectory()) {
      await handle.close()
      throw new ServiceError(`"${file}" is a folder: name a file with one edit a line.`)
    }
    return handle
  } catch (error) {
    if (error instanceof ServiceError) throw error
    throw new ServiceError(`The edits in ${file} can't be read because ${systemReason(error)}.`)
  }
}

const BYTE_ORDER_MARK = /^\uFEFF/

/** An edit, or the step back or forth that a line asks for. */
function made(session: JobSession, json: unknown, by: string): Promise<Acknowledged> {
  if (typeof json === 'object' && json !== null && 'do' in json && Object.keys(json).length === 1) {
    if (json.do === 'undo') return session.undo(by)
    if (json.do === 'redo') return session.redo(by)
  }
  return session.edit(readEdit(json), by)
}

async function makeOne(session: JobSession, line: string, where: string, by: string): Promise<void> {
  try {
    let json: unknown
    try {
      json = JSON.parse(line)
    } catch {
      throw new ServiceError('this is not one JSON object on one line.')
    }
    const { n, name, introduced } = await made(session, json, by)
    if (introduced !== undefined) print(`ok ${introduced.n}: ${introduced.name} "${by}"\n`)
    print(`ok ${n}: ${name}\n`)
  } catch (error) {
    if (error instanceof ScantlingError) throw new ServiceError(`${where}: ${error.message}`)
    throw error
  }
}

/**
 * Reads edits line by line, makes each and answers it once it is on disk; saves and closes the job at the end.
 * @param file undefined: standard input
 * @throws ServiceError at the first edit that is refused, with its line; the ones before it stay
 */
export async function makeEdits(folder: string, file: string | undefined, by: string): Promise<void> {
  const handle = file === undefined ? undefined : await openEdits(file)
  const input = handle?.createReadStream({ autoClose: false }) ?? process.stdin
  try {
    const session = await openJob(folder, { mode: 'write' })
    const stop = (): void => {
      void session.close().finally(() => process.exit(STOPPED_BY_SIGNAL))
    }
    try {
      if (!session.writable) {
        throw new ServiceError(
          `The job ${folder} can't be edited now: ${session.readOnlyBecause === undefined ? '' : inWords(session.readOnlyBecause)}`,
        )
      }
      process.once('SIGINT', stop)
      process.once('SIGTERM', stop)
      for (const notice of session.notices) note(inWords(notice))
      let number = 0
      for await (const text of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })) {
        number += 1
        const line = number === 1 ? text.replace(BYTE_ORDER_MARK, '') : text
        if (line.trim() !== '')
          await makeOne(
            session,
            line,
            `${file === undefined ? 'Standard input' : `"${file}"`}, line ${number}`,
            by,
          )
      }
    } finally {
      process.off('SIGINT', stop)
      process.off('SIGTERM', stop)
      await session.close()
    }
  } finally {
    await handle?.close()
    if (handle === undefined) process.stdin.destroy()
  }
}
