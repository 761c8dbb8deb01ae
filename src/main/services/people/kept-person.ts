import { mkdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'
import { replaceFile } from '../files/replace-file.ts'
import { systemCause } from '../files/system-reason.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'

const SHAPE = z.object({
  format: z.literal('scantling-person'),
  version: z.literal(1),
  name: z.string().trim().min(1).max(200),
})

/** Where it is kept who is at work. */
export const personFile = (settings: string): string => join(settings, 'person.json')

/**
 * Who is at work at this machine, as they said themselves. Never the login: that is often one name for a whole workshop.
 * It is read anew each time, for other processes keep the same file.
 */
export class KeptPerson {
  readonly #settings: string

  /** @param settings folder of what the program remembers */
  constructor(settings: string) {
    this.#settings = settings
  }

  /** Their name; empty as long as nobody has said it, or what was kept can't be understood: it is asked for then. */
  async name(): Promise<string> {
    try {
      return SHAPE.parse(JSON.parse(await readFile(personFile(this.#settings), 'utf8'))).name
    } catch {
      return ''
    }
  }

  /** Keeps who is at work from now on. @throws ServiceError when that can't be written; whoever was there before stays */
  async keep(name: string): Promise<void> {
    const path = personFile(this.#settings)
    try {
      await mkdir(this.#settings, { recursive: true })
      await replaceFile(
        path,
        `${JSON.stringify({ format: 'scantling-person', version: 1, name: name.trim() }, null, 2)}\n`,
      )
    } catch (error) {
      throw new ServiceError(
        reason('person.not-kept', { name: name.trim(), path, cause: systemCause(error) }),
      )
    }
  }
}
