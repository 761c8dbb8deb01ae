import { createHash } from 'node:crypto'
import { type BigIntStats, constants, type Stats } from 'node:fs'
import { type FileHandle, lstat, open } from 'node:fs/promises'
import { systemCause, systemCode } from '../../files/system-reason.ts'
import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'
import { type LockHolder, readHolder } from './lock-holder.ts'

/** What may lie where a lock belongs, and is none. */
export type InTheWay = 'folder' | 'link' | 'pipe' | 'device' | 'socket'

/** What was found where a lock belongs. */
export type FoundLock =
  | { kind: 'absent' }
  | { kind: 'held'; holder: LockHolder; token: string }
  | {
      kind: 'unreadable'
      /** Tells it from whatever may lie there next. */
      token: string
      /** When it was last changed, milliseconds since 1970. */
      changed: number
      /** Whether it says something whole, as a version of this program to come may. */
      says: boolean
    }
  | { kind: 'in-the-way'; what: InTheWay }

/** Bytes; a lock has a few hundred. */
const MOST = 16 * 1024

/** A link is not followed, and nothing is waited for, should another thing take the place of the file meanwhile. */
const HOW = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0)

function thingOf(entry: Stats | BigIntStats): InTheWay | 'file' {
  if (entry.isFile()) return 'file'
  if (entry.isDirectory()) return 'folder'
  if (entry.isSymbolicLink()) return 'link'
  if (entry.isFIFO()) return 'pipe'
  return entry.isSocket() ? 'socket' : 'device'
}

/** @param size as many bytes as it has, whatever is written to it meanwhile */
async function firstBytes(handle: FileHandle, size: bigint): Promise<Buffer> {
  const bytes = Buffer.alloc(size < MOST ? Number(size) : MOST)
  let length = 0
  while (length < bytes.length) {
    const { bytesRead } = await handle.read(bytes, length, bytes.length - length, length)
    if (bytesRead === 0) break
    length += bytesRead
  }
  return bytes.subarray(0, length)
}

async function readLock(handle: FileHandle, entry: BigIntStats): Promise<FoundLock> {
  const bytes = await firstBytes(handle, entry.size)
  let json: unknown
  try {
    json = JSON.parse(bytes.toString('utf8'))
  } catch {
    json = undefined
  }
  const holder = readHolder(json)
  if (holder !== undefined) return { kind: 'held', holder, token: holder.token }
  const token = createHash('sha256').update(`${entry.size} ${entry.mtimeNs} `).update(bytes).digest('hex')
  return {
    kind: 'unreadable',
    token: token.slice(0, 24),
    changed: Number(entry.mtimeNs / 1_000_000n),
    says: typeof json === 'object' && json !== null,
  }
}

/**
 * Looks at what lies where a lock belongs: in bounded time and memory, whatever it is.
 * @throws ServiceError when it can't be read
 */
export async function lookAtLock(path: string): Promise<FoundLock> {
  try {
    const thing = thingOf(await lstat(path))
    // Even to open a device may set it to work.
    if (thing !== 'file') return { kind: 'in-the-way', what: thing }
    const handle = await open(path, HOW)
    try {
      const entry = await handle.stat({ bigint: true })
      const opened = thingOf(entry)
      return opened === 'file' ? await readLock(handle, entry) : { kind: 'in-the-way', what: opened }
    } finally {
      await handle.close()
    }
  } catch (error) {
    const code = systemCode(error)
    if (code === 'ENOENT') return { kind: 'absent' }
    if (code === 'ELOOP') return { kind: 'in-the-way', what: 'link' }
    throw new ServiceError(reason('lock.not-read', { path, cause: systemCause(error) }))
  }
}
