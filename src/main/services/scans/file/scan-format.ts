import { open, stat } from 'node:fs/promises'
import type { ScanLook } from '../../../../contract/scan-look.ts'
import { systemCause } from '../../files/system-reason.ts'
import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'

export type ScanFormat = ScanLook['format']

/** A PDF may begin with other bytes: ISO 32000-1, annex H, implementation note 13. */
const HEAD = 1024

const TIFF = ['II*\0', 'MM\0*', 'II+\0', 'MM\0+']

/** The format that the first bytes of a file show; undefined when it is none that is read. */
export function formatOf(head: Buffer): ScanFormat | undefined {
  const start = head.toString('latin1', 0, HEAD)
  if (start.startsWith('\x89PNG\r\n\x1a\n')) return 'png'
  if (start.startsWith('\xff\xd8\xff')) return 'jpeg'
  if (start.startsWith('RIFF') && start.startsWith('WEBP', 8)) return 'webp'
  if (TIFF.includes(start.slice(0, 4))) return 'tiff'
  return start.includes('%PDF-') ? 'pdf' : undefined
}

/**
 * What kind of file a scan is, by its first bytes; whatever its name says.
 * @param called what messages call it
 * @throws ServiceError when it is missing, empty or of no kind that is read
 */
export async function scanFormat(path: string, called: string): Promise<ScanFormat> {
  const head = Buffer.alloc(HEAD)
  let length: number
  try {
    const entry = await stat(path)
    if (!entry.isFile()) throw new ServiceError(reason('scan.not-a-file', { scan: called }))
    if (entry.size === 0) throw new ServiceError(reason('scan.empty', { scan: called }))
    const file = await open(path)
    try {
      length = (await file.read(head, 0, HEAD, 0)).bytesRead
    } finally {
      await file.close()
    }
  } catch (error) {
    if (error instanceof ServiceError) throw error
    throw new ServiceError(reason('scan.not-read', { scan: called, cause: systemCause(error) }))
  }
  const format = formatOf(head.subarray(0, length))
  if (format !== undefined) return format
  throw new ServiceError(reason('scan.no-picture', { scan: called }))
}
