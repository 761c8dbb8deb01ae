import { randomBytes } from 'node:crypto'
import { mkdir, readdir, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { systemCode, systemReason } from '../files/system-reason.ts'
import { ServiceError } from '../service-error.ts'

const NAME = /^bench-(\d+)-[0-9a-f]{16}$/

const ended = (pid: number): boolean => {
  try {
    process.kill(pid, 0)
    return false
  } catch (error) {
    return systemCode(error) === 'ESRCH'
  }
}

/**
 * A folder of this process's own below `temporary`, that nobody else may look into. What processes that died left
 * there is removed.
 * @throws ServiceError when it can't be made
 */
export async function ownTemporary(temporary: string): Promise<string> {
  try {
    await mkdir(temporary, { recursive: true })
    for (const name of await readdir(temporary)) {
      const pid = NAME.exec(name)?.[1]
      if (pid !== undefined && ended(Number(pid)))
        await rm(join(temporary, name), { recursive: true, force: true })
    }
    const folder = join(temporary, `bench-${process.pid}-${randomBytes(8).toString('hex')}`)
    await mkdir(folder, { mode: 0o700 })
    return folder
  } catch (error) {
    throw new ServiceError(
      `The folder for temporary files ${temporary} can't be used because ${systemReason(error)}: ` +
        'put that right and try again.',
    )
  }
}
