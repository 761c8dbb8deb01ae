import { stat } from 'node:fs/promises'
import type { ReadOrder } from './read-protocol.ts'

/** Seconds that any file may take, and more for each megabyte of it. Common practice, no source. */
const ANY_FILE = 15
const EACH_MEGABYTE = 10

/**
 * Seconds that reading may take: a small file that says it is huge is not waited for as a huge one is. Drawing a page
 * depends on what is drawn and not on the size of the file; there the limit alone counts.
 */
export async function timeAllowed({ path, task, limits }: ReadOrder): Promise<number> {
  if (task.do === 'draw') return limits.seconds
  const bytes = await stat(path).then(
    ({ size }) => size,
    () => 0,
  )
  return Math.min(limits.seconds, ANY_FILE + Math.ceil((EACH_MEGABYTE * bytes) / 1024 ** 2))
}
