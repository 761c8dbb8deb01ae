import { systemCause, systemCode } from '../../files/system-reason.ts'
import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'
import { openForReading } from './history-handle.ts'
import type { KeptLine } from './kept-line.ts'
import { readLine } from './line-text.ts'
import { segmentsFrom } from './segments.ts'

/**
 * The whole lines of a history, oldest first, a few hundred at a time: no history is held whole. Where there is none yet,
 * nothing. What is not whole is passed over; opening the job says so.
 * @param looks as: only lines whose bytes it takes are read; a quick way past those that can't matter
 * @throws ServiceError when it can't be read
 */
export async function* readLines(
  path: string,
  looks: (bytes: Buffer) => boolean = () => true,
): AsyncGenerator<KeptLine[]> {
  try {
    const handle = await openForReading(path)
    try {
      for await (const segments of segmentsFrom(handle, 0)) {
        yield segments.flatMap(({ bytes, ended }) => {
          const read = ended && looks(bytes) ? readLine(bytes) : undefined
          return read === undefined ? [] : [read.line]
        })
      }
    } finally {
      await handle.close()
    }
  } catch (error) {
    if (error instanceof ServiceError) throw error
    if (systemCode(error) === 'ENOENT') return
    throw new ServiceError(reason('history.not-read', { path, cause: systemCause(error) }))
  }
}
