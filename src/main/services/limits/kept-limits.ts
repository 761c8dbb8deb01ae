import { mkdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { LIMITS, type Limits, limitsSchema } from '../../../contract/limits.ts'
import { withoutStop } from '../../../core/words/without-stop.ts'
import { replaceFile } from '../files/replace-file.ts'
import { systemCause, systemCode } from '../files/system-reason.ts'
import { ServiceError } from '../service-error.ts'
import { reason, type ServiceReason } from '../words/services-words.ts'

export { LIMITS, type Limits, limitsSchema }

/** Where the limits lie that a person set. */
export const limitsFile = (settings: string): string => join(settings, 'limits.json')

/** How much is taken in: what a person set, else what is usual. */
export class KeptLimits {
  readonly #settings: string
  #limits: Limits
  #trouble: ServiceReason | undefined
  #read: Promise<void> | undefined

  /**
   * @param settings folder of what the program remembers
   * @param unless those that hold where a person set none; what is usual unless given
   */
  constructor(settings: string, unless: Limits = LIMITS) {
    this.#settings = settings
    this.#limits = unless
  }

  /** Why the limits that were set don't hold; undefined when they do, or none were set. */
  get trouble(): ServiceReason | undefined {
    return this.#trouble
  }

  /** The limits as they are now; the usual ones until they were `read`. */
  get now(): Limits {
    return this.#limits
  }

  /** Reads what was set, once. A file that can't be understood is told of in `trouble`, and left as it is. */
  async read(): Promise<Limits> {
    this.#read ??= this.#readFile()
    await this.#read
    return this.#limits
  }

  /**
   * Sets the limits, and keeps them.
   * @throws ServiceError when they are out of bounds or can't be written; the old ones hold then
   */
  async set(limits: Limits): Promise<Limits> {
    const checked = limitsSchema.safeParse(limits)
    if (!checked.success)
      throw new ServiceError(reason('limits.not-set', { problem: whatIsWrong(checked.error) }))
    await this.read()
    const file = limitsFile(this.#settings)
    try {
      await mkdir(this.#settings, { recursive: true })
      await replaceFile(file, `${JSON.stringify(checked.data, null, 2)}\n`)
    } catch (error) {
      throw new ServiceError(reason('limits.not-kept', { path: file, cause: systemCause(error) }))
    }
    this.#limits = checked.data
    this.#trouble = undefined
    return checked.data
  }

  async #readFile(): Promise<void> {
    const file = limitsFile(this.#settings)
    try {
      const parsed = limitsSchema.safeParse(JSON.parse(await readFile(file, 'utf8')))
      if (parsed.success) this.#limits = parsed.data
      else this.#trouble = reason('limits.unsound', { path: file, problem: whatIsWrong(parsed.error) })
    } catch (error) {
      if (systemCode(error) === 'ENOENT') return
      this.#trouble =
        error instanceof SyntaxError
          ? reason('limits.not-json', { path: file })
          : reason('limits.not-read', { path: file, cause: systemCause(error) })
    }
  }
}

function whatIsWrong({ issues: [issue] }: { issues: { path: PropertyKey[]; message: string }[] }): string {
  if (issue === undefined) return 'they are not understood'
  const where = issue.path.length === 0 ? '' : `"${issue.path.join('.')}": `
  return `${where}${withoutStop(issue.message)}`
}
