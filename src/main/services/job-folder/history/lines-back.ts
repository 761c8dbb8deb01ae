import { systemCause, systemCode } from '../../files/system-reason.ts'
import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'
import { type HistoryHandle, openForReading } from './history-handle.ts'
import { isBegin, type KeptLine } from './kept-line.ts'
import { readLine } from './line-text.ts'
import { segmentsBack } from './segments-back.ts'

const isFirstOfItsWrite = (line: KeptLine): boolean =>
  isBegin(line) || line.together === undefined || line.together === line.n

async function* wholeLinesBack(
  handle: Pick<HistoryHandle, 'read'>,
  end: number,
  looks: (bytes: Buffer) => boolean,
): AsyncGenerator<KeptLine> {
  /** Lines at the end that went to disk together: none was acknowledged unless all are whole. null: past them. */
  let together: KeptLine[] | null = []
  for await (const segments of segmentsBack(handle, end)) {
    for (const { bytes, ended } of segments) {
      if (together === null) {
        const line = looks(bytes) ? readLine(bytes)?.line : undefined
        if (line !== undefined) yield line
        continue
      }
      const line = ended ? readLine(bytes)?.line : undefined
      if (line === undefined) {
        together = []
        continue
      }
      together.push(line)
      if (!isFirstOfItsWrite(line)) continue
      yield* together
      together = null
    }
  }
}

/**
 * The whole lines of a history from the newest back; it is never held whole. Where there is none yet, nothing. What is
 * not whole is passed over; opening the job says so.
 * @param looks as: only lines whose bytes it takes are read; a quick way past those that can't matter. The newest are
 * always read.
 * @throws ServiceError when it can't be read
 */
export async function* linesBack(
  path: string,
  looks: (bytes: Buffer) => boolean = () => true,
): AsyncGenerator<KeptLine> {
  try {
    const handle = await openForReading(path)
    try {
      const { size } = await handle.stat()
      yield* wholeLinesBack(handle, size, looks)
    } finally {
      await handle.close()
    }
  } catch (error) {
    if (error instanceof ServiceError) throw error
    if (systemCode(error) === 'ENOENT') return
    throw new ServiceError(reason('history.not-read', { path, cause: systemCause(error) }))
  }
}
