import { constants, type FileHandle, lstat, open } from 'node:fs/promises'
import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'

/** What is needed of an open history; a test gives one whose disk is full. */
export interface HistoryHandle {
  read(bytes: Uint8Array, offset: number, length: number, position: number): Promise<{ bytesRead: number }>
  write(
    bytes: Uint8Array,
    offset: number,
    length: number,
    position: number,
  ): Promise<{ bytesWritten: number }>
  sync(): Promise<void>
  truncate(length: number): Promise<void>
  stat(options: { bigint: true }): Promise<FileMarks>
  close(): Promise<void>
}

/** What tells a file, and one state of it, from another. */
export interface FileMarks {
  dev: bigint
  ino: bigint
  size: bigint
  mtimeNs: bigint
}

export type OpenHistory = (path: string) => Promise<HistoryHandle>

/** @throws ServiceError unless a plain file stands there, or nothing. */
export async function mustBePlain(path: string): Promise<void> {
  const entry = await lstat(path).catch(() => undefined)
  if (entry !== undefined && !entry.isFile()) throw new ServiceError(reason('history.not-plain', { path }))
}

// A link put in its place between the look and the opening is not followed, and a pipe is not waited for.
const CAREFULLY = (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0)

/** Opens a history that is there, for reading only. */
export async function openForReading(path: string): Promise<FileHandle> {
  await mustBePlain(path)
  return open(path, constants.O_RDONLY | CAREFULLY)
}

/** Opens a history that is there, for reading and writing. */
export const openHistoryFile: OpenHistory = async (path) => {
  await mustBePlain(path)
  return open(path, constants.O_RDWR | CAREFULLY)
}
