import { type FileHandle, open } from 'node:fs/promises'
import { createInterface } from 'node:readline'
import { type GivenId, readNewEdit } from '../../../core/job/edits/edit.ts'
import { ScantlingError } from '../../../core/words/scantling-error.ts'
import { systemCause } from '../../services/files/system-reason.ts'
import { mint } from '../../services/ids/mint.ts'
import type { Acknowledged, JobSession } from '../../services/job-folder/job-session.ts'
import { openJob } from '../../services/job-folder/open-job.ts'
import type { Output } from '../output/output.ts'
import { CliError } from '../words/cli-error.ts'
import { reason } from '../words/cli-words.ts'
import { mustBeWritable } from './must-be-writable.ts'

const STOPPED_BY_SIGNAL = 130

async function openEdits(file: string): Promise<FileHandle> {
  try {
    const handle = await open(file, 'r')
    if ((await handle.stat()).isDirectory()) {
      await handle.close()
      throw new CliError(reason('cli.edits-are-a-folder', { file }))
    }
    return handle
  } catch (error) {
    if (error instanceof CliError) throw error
    throw new CliError(reason('cli.edits-unreadable', { file, why: systemCause(error) }))
  }
}

const BYTE_ORDER_MARK = /^\uFEFF/

/** What a line came to, and the ids that were given to what it adds. */
interface Done {
  acknowledged: Acknowledged
  given: readonly GivenId[]
}

/** An edit, or the step back or forth that a line asks for. */
async function made(session: JobSession, json: unknown, by: string): Promise<Done> {
  if (typeof json === 'object' && json !== null && 'do' in json) {
    const { do: does, theirs = false, ...rest } = json as Record<string, unknown>
    if (Object.keys(rest).length === 0 && typeof theirs === 'boolean') {
      if (does === 'undo') return { acknowledged: await session.undo(by, theirs), given: [] }
      if (does === 'redo') return { acknowledged: await session.redo(by, theirs), given: [] }
    }
  }
  const { edit, given } = readNewEdit(json, session.job, mint)
  return { acknowledged: await session.edit(edit, by), given }
}

/** For programs, which go on from them: ` (mark m-7k3f9q2xw5tzb)`. */
const idsGiven = (given: readonly GivenId[]): string =>
  given.length === 0 ? '' : ` (${given.map(({ as, id }) => `${as} ${id}`).join(', ')})`

interface Line {
  text: string
  /** The name of the file; null: standard input. */
  file: string | null
  /** Its number, from 1. */
  line: number
}

async function makeOne(
  output: Output,
  session: JobSession,
  { text, file, line }: Line,
  by: string,
): Promise<void> {
  try {
    let json: unknown
    try {
      json = JSON.parse(text)
    } catch {
      throw new CliError(reason('cli.edit-not-json'))
    }
    const { acknowledged, given } = await made(session, json, by)
    const { n, name, introduced } = acknowledged
    if (introduced !== undefined) output.print(`ok ${introduced.n}: ${introduced.name}\n`)
    output.print(`ok ${n}: ${name}${idsGiven(given)}\n`)
  } catch (error) {
    if (!(error instanceof ScantlingError)) throw error
    throw new CliError(reason('cli.edit-refused', { file, line, why: error.reason }))
  }
}

/**
 * Reads edits line by line, makes each and answers it once it is on disk; saves and closes the job at the end.
 * @param file undefined: standard input
 * @param how who makes them; the lock that is to be taken over, as the refusal named it
 * @throws CliError at the first edit that is refused, with its line; the ones before it stay
 */
export async function makeEdits(
  output: Output,
  folder: string,
  file: string | undefined,
  { by, takeOver }: { by: string; takeOver?: string },
): Promise<void> {
  const handle = file === undefined ? undefined : await openEdits(file)
  const input = handle?.createReadStream({ autoClose: false }) ?? output.stdin
  try {
    const session = await openJob(folder, { mode: 'write', takeOver, person: by })
    const stop = (): void => {
      void session.close().finally(() => process.exit(STOPPED_BY_SIGNAL))
    }
    try {
      mustBeWritable(session, folder)
      process.once('SIGINT', stop)
      process.once('SIGTERM', stop)
      for (const notice of session.notices) output.note(notice)
      let number = 0
      for await (const text of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })) {
        number += 1
        const line = number === 1 ? text.replace(BYTE_ORDER_MARK, '') : text
        if (line.trim() === '') continue
        await makeOne(output, session, { text: line, file: file ?? null, line: number }, by)
      }
    } finally {
      process.off('SIGINT', stop)
      process.off('SIGTERM', stop)
      await session.close()
    }
  } finally {
    await handle?.close()
    if (handle === undefined) output.stdin.destroy()
  }
}
