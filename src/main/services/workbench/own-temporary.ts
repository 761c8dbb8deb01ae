import { randomBytes } from 'node:crypto'
import { mkdir, readdir, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { systemCause } from '../files/system-reason.ts'
import { hasEnded, machineMark } from '../machine/this-machine.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'

const NAME = /^bench-([0-9a-f]{8})-(\d+)-[0-9a-f]{16}$/

/**
 * Makes a folder of this process's own below `temporary`, that nobody else may look into. What processes of this
 * machine that died left there is removed.
 * @throws ServiceError when it can't be made
 */
async function make(temporary: string): Promise<string> {
  try {
    const machine = machineMark()
    await mkdir(temporary, { recursive: true })
    for (const name of await readdir(temporary)) {
      const [, mark, pid] = NAME.exec(name) ?? []
      if (mark === machine && hasEnded(Number(pid)))
        await rm(join(temporary, name), { recursive: true, force: true })
    }
    const folder = join(temporary, `bench-${machine}-${process.pid}-${randomBytes(8).toString('hex')}`)
    await mkdir(folder, { mode: 0o700 })
    return folder
  } catch (error) {
    throw new ServiceError(reason('temporary.unusable', { folder: temporary, cause: systemCause(error) }))
  }
}

/** This process's own folder for temporary files, made when it is first needed. */
export class OwnTemporary {
  readonly #temporary: string
  #folder: Promise<string> | undefined

  constructor(temporary: string) {
    this.#temporary = temporary
  }

  /** @throws ServiceError when it can't be made; the next call tries again */
  folder(): Promise<string> {
    this.#folder ??= make(this.#temporary).catch((error: unknown) => {
      this.#folder = undefined
      throw error
    })
    return this.#folder
  }

  async remove(): Promise<void> {
    const folder = await this.#folder?.catch(() => undefined)
    if (folder !== undefined) await rm(folder, { recursive: true, force: true }).catch(() => undefined)
  }
}
