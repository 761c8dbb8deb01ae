import { constants } from 'node:fs'
import { open } from 'node:fs/promises'
import { type LockHolder, readHolder, writeHolder } from './lock-holder.ts'

/** A link is not followed, and nothing is waited for. */
const HOW = constants.O_RDWR | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0)

/**
 * Has a lock of this process's own say who is at work by now; one that is somebody else's is left alone. It is written
 * into the very file that was seen to be its own: should that be replaced meanwhile, the new one is not touched.
 * @throws the system's error
 */
export async function nameHolder(path: string, holder: LockHolder): Promise<void> {
  const handle = await open(path, HOW)
  try {
    const before = await handle.readFile()
    if (tokenIn(before) !== holder.token) return
    // Never shorter than before, and by one write: whoever reads it at any time finds a lock, or one that is being filled.
    const text = writeHolder(holder).trimEnd()
    const bytes = Buffer.from(text)
    const filled = Buffer.alloc(Math.max(bytes.length + 1, before.length), ' ')
    bytes.copy(filled)
    filled.write('\n', filled.length - 1)
    await handle.write(filled, 0, filled.length, 0)
    await handle.sync()
  } finally {
    await handle.close()
  }
}

function tokenIn(bytes: Buffer): string | undefined {
  try {
    return readHolder(JSON.parse(bytes.toString('utf8')))?.token
  } catch {
    return undefined
  }
}
