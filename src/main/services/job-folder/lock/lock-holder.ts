import { randomBytes } from 'node:crypto'
import { userInfo } from 'node:os'
import { processStart } from '../../machine/process-start.ts'
import { thisHost, thisMachine } from '../../machine/this-machine.ts'

/** Who holds a job folder open for writing: the content of its `.lock` file. */
export interface LockHolder {
  /** Identity of this one hold; no two are alike. */
  token: string
  pid: number
  host: string
  /** What tells this machine from another of the same name, where the system has it. */
  machine?: string
  user: string
  /** When the process was started, as the system counts it; tells a reused pid from the process that locked. */
  start?: string
  /** When the folder was locked, ISO 8601. */
  since: string
}

const login = (): string => {
  try {
    return userInfo().username
  } catch {
    return process.env['USER'] ?? process.env['USERNAME'] ?? 'somebody'
  }
}

/** A hold by this process, from now. */
export function thisHolder(now: Date): LockHolder {
  const machine = thisMachine()
  const start = processStart(process.pid)
  return {
    token: randomBytes(12).toString('hex'),
    pid: process.pid,
    host: thisHost(),
    ...(machine === undefined ? {} : { machine }),
    user: login(),
    ...(start === undefined ? {} : { start }),
    since: now.toISOString(),
  }
}

export const writeHolder = (holder: LockHolder): string => `${JSON.stringify(holder)}\n`

/** Reads a lock file's text; undefined when it is damaged. */
export function readHolder(text: string): LockHolder | undefined {
  let json: unknown
  try {
    json = JSON.parse(text)
  } catch {
    return undefined
  }
  if (typeof json !== 'object' || json === null) return undefined
  const { token, pid, host, machine, user, start, since } = json as Record<string, unknown>
  if (typeof token !== 'string' || !/^[0-9a-f]{24}$/.test(token)) return undefined
  if (typeof pid !== 'number' || !Number.isSafeInteger(pid) || pid <= 0) return undefined
  if (typeof host !== 'string' || typeof user !== 'string' || typeof since !== 'string') return undefined
  return {
    token,
    pid,
    host,
    ...(typeof machine === 'string' ? { machine } : {}),
    user,
    ...(typeof start === 'string' ? { start } : {}),
    since,
  }
}
