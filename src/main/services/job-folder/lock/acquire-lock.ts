import { link, open, readFile, rename, unlink } from 'node:fs/promises'
import { systemCode } from '../../files/system-reason.ts'
import { holderIsDead } from './holder-is-dead.ts'
import { type LockHolder, readHolder, writeHolder } from './lock-holder.ts'

export type LockOutcome =
  | { kind: 'acquired'; takenOverFrom?: LockHolder }
  /** holder undefined: the lock file is damaged. */
  | { kind: 'held'; holder: LockHolder | undefined }

const MOMENT = 20
const MOMENTS_TO_FILL = 15
const MOST_ATTEMPTS = 200

const moment = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, MOMENT))

/** `damaged` after its writer has had time to fill it; `absent` when there is no file. */
async function readLock(path: string): Promise<LockHolder | 'absent' | 'damaged'> {
  for (let look = 0; look < MOMENTS_TO_FILL; look++) {
    let text: string
    try {
      text = await readFile(path, 'utf8')
    } catch (error) {
      if (systemCode(error) === 'ENOENT') return 'absent'
      throw error
    }
    const holder = readHolder(text)
    if (holder !== undefined) return holder
    // On a file system without hard links the file exists for an instant before it is filled.
    await moment()
  }
  return 'damaged'
}

/** Creates the lock file, filled, only if there is none: true when this call created it. */
async function createLock(path: string, holder: LockHolder): Promise<boolean> {
  const filled = `${path}.${holder.token}.tmp`
  const handle = await open(filled, 'wx')
  try {
    await handle.writeFile(writeHolder(holder))
  } finally {
    await handle.close()
  }
  try {
    await link(filled, path)
    return true
  } catch (error) {
    const code = systemCode(error)
    if (code === 'EEXIST') return false
    if (code !== 'EPERM' && code !== 'ENOTSUP' && code !== 'EOPNOTSUPP' && code !== 'ENOSYS') throw error
  } finally {
    await unlink(filled).catch(() => undefined)
  }
  try {
    const exclusive = await open(path, 'wx')
    try {
      await exclusive.writeFile(writeHolder(holder))
    } finally {
      await exclusive.close()
    }
    return true
  } catch (error) {
    if (systemCode(error) === 'EEXIST') return false
    throw error
  }
}

/**
 * Takes the lock at `path` for `holder`, or says who has it.
 *
 * A lock of a dead process is succeeded by a claim named after that very hold (`.lock.after-TOKEN`), itself a lock
 * taken by this same function. Only whoever has the claim may replace the dead lock, and only after seeing under
 * the claim that it is still there; so of any number of processes that try at once exactly one succeeds, and a
 * claimant that dies half-way is succeeded in its turn.
 */
export async function acquireLock(path: string, holder: LockHolder): Promise<LockOutcome> {
  for (let attempt = 0; attempt < MOST_ATTEMPTS; attempt++) {
    const present = await readLock(path)
    if (present === 'damaged') return { kind: 'held', holder: undefined }
    if (present === 'absent') {
      if (await createLock(path, holder)) return { kind: 'acquired' }
      continue
    }
    if (!holderIsDead(present)) return { kind: 'held', holder: present }

    const claim = `${path}.after-${present.token}`
    const claimed = await acquireLock(claim, holder)
    if (claimed.kind === 'held') {
      if (claimed.holder === undefined) return claimed
      await moment()
      continue
    }
    const still = await readLock(path)
    if (typeof still === 'object' && still.token === present.token) {
      await rename(claim, path)
      return { kind: 'acquired', takenOverFrom: present }
    }
    await unlink(claim).catch(() => undefined)
  }
  const present = await readLock(path)
  return { kind: 'held', holder: typeof present === 'object' ? present : undefined }
}

/** True while the lock file is the one this hold created. */
export async function stillHeld(path: string, holder: LockHolder): Promise<boolean> {
  try {
    return readHolder(await readFile(path, 'utf8'))?.token === holder.token
  } catch {
    return false
  }
}

/** Gives the lock back; leaves a lock alone that is somebody else's by now. */
export async function releaseLock(path: string, holder: LockHolder): Promise<void> {
  if (await stillHeld(path, holder)) await unlink(path)
}
