import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { systemCode } from '../files/system-reason.ts'

export const thisHost = (): string => hostname()

/** The machine's own identity on Linux; undefined elsewhere. */
export function thisMachine(): string | undefined {
  try {
    return readFileSync('/etc/machine-id', 'utf8').trim() || undefined
  } catch {
    return undefined
  }
}

/**
 * Eight hexadecimal digits that tell this machine from another: a folder may be shared by machines, and the number of a
 * process means nothing on another one.
 */
export const machineMark = (): string =>
  createHash('sha256')
    .update(thisMachine() ?? thisHost())
    .digest('hex')
    .slice(0, 8)

/** Whether this machine has no process of this number. */
export function hasEnded(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return false
  } catch (error) {
    return systemCode(error) === 'ESRCH'
  }
}
