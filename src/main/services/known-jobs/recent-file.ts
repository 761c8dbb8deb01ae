import { mkdir, readFile, rename } from 'node:fs/promises'
import { dirname } from 'node:path'
import { z } from 'zod'
import { replaceFile } from '../files/replace-file.ts'
import { systemCode, systemReason } from '../files/system-reason.ts'

/** A job that was open before. */
export interface KnownJob {
  folder: string
  title: string
  /** ISO 8601. */
  openedAt: string
  /** The id of the job, by which it is found again where it was moved. */
  job?: string | undefined
}

const SHAPE = z.object({
  format: z.literal('scantling-recent'),
  version: z.literal(1),
  jobs: z.array(
    z.object({
      folder: z.string().min(1),
      title: z.string(),
      openedAt: z.string(),
      job: z.string().optional(),
    }),
  ),
})

const read = (text: string): KnownJob[] | undefined => {
  try {
    return SHAPE.parse(JSON.parse(text)).jobs
  } catch {
    return undefined
  }
}

/**
 * The jobs that recent.json lists. A file that can't be understood is set aside under another name, and the list
 * begins anew: nobody's work depends on it.
 * @param log told, in one line, what was wrong
 */
export async function readRecent(path: string, log: (line: string) => void): Promise<KnownJob[]> {
  let text: string
  try {
    text = await readFile(path, 'utf8')
  } catch (error) {
    if (systemCode(error) !== 'ENOENT') log(`${path} can't be read because ${systemReason(error)}.`)
    return []
  }
  const jobs = read(text)
  if (jobs !== undefined) return jobs
  const aside = `${path}.damaged`
  try {
    await rename(path, aside)
    log(`${path} could not be understood and was set aside as ${aside}; the list of recent jobs begins anew.`)
  } catch (error) {
    log(`${path} could not be understood, nor set aside because ${systemReason(error)}.`)
  }
  return []
}

/** Writes the list whole; where that can't be done, says so in one line, and the work goes on. */
export async function writeRecent(
  path: string,
  jobs: readonly KnownJob[],
  log: (line: string) => void,
): Promise<void> {
  try {
    await mkdir(dirname(path), { recursive: true })
    await replaceFile(path, `${JSON.stringify({ format: 'scantling-recent', version: 1, jobs }, null, 2)}\n`)
  } catch (error) {
    log(`${path} could not be written because ${systemReason(error)}; the list of recent jobs is not kept.`)
  }
}
