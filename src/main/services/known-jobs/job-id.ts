import { open } from 'node:fs/promises'
import { jobFile } from '../job-layout/job-layout.ts'

/** Bytes: what stands before the id in a document is short. */
const HEAD = 1024

/** The head of a document as it is written: its id stands third, before anything that a person wrote. */
const ID = /^\s*\{\s*"format":\s*"scantling-job",\s*"version":\s*\d+,\s*"id":\s*"([^"\\]{1,200})"/

/** The id of the job in a folder, by the head of its document alone; undefined where there is no job, or it has none. */
export async function jobIdIn(folder: string): Promise<string | undefined> {
  try {
    const handle = await open(jobFile(folder), 'r')
    try {
      if (!(await handle.stat()).isFile()) return undefined
      const { buffer, bytesRead } = await handle.read(Buffer.alloc(HEAD), 0, HEAD, 0)
      return ID.exec(buffer.toString('utf8', 0, bytesRead))?.[1]
    } finally {
      await handle.close()
    }
  } catch {
    return undefined
  }
}
