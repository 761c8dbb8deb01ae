import { randomBytes } from 'node:crypto'
import { userInfo } from 'node:os'
import { processStart } from '../../machine/process-start.ts'
import { pidNamespace, thisBoot } from '../../machine/this-boot.ts'
import { thisHost, thisMachine } from '../../machine/this-machine.ts'

/** Who holds a job folder open for writing: the content of its `.lock` file. */
export interface LockHolder {
  /** Identity of this one hold; no two are alike. */
  token: string
  pid: number
  host: string
  /** What tells this machine from another of the same name, where the system has it. */
  machine?: string
  /** What tells this boot of the machine from others, where the system has it. */
  boot?: string
  /** The PID namespace in which `pid` is its number, where the system has them. */
  namespace?: string
  user: string
  /** Who is at work, where they have said it. */
  person?: string
  /** When the process was started, as the system counts it; tells a reused pid from the process that locked. */
  start?: string
  /** When the folder was locked, ISO 8601. */
  since: string
  /** The numbers of the folder that is locked, where they tell it from a copy of it. */
  folder?: string
}

const login = (): string => {
  try {
    return userInfo().username
  } catch {
    return process.env['USER'] ?? process.env['USERNAME'] ?? 'somebody'
  }
}

const TOKEN = /^[0-9a-f]{24}$/

/** Longer than any name of a host or a user. */
const MOST_LETTERS = 300

const isName = (value: unknown): value is string => typeof value === 'string' && value.length <= MOST_LETTERS

const OPTIONAL = ['person', 'machine', 'boot', 'namespace', 'start', 'folder'] as const

/** Those of the fields that a system need not have which are there. */
function optional(from: Readonly<Record<string, unknown>>): Pick<LockHolder, (typeof OPTIONAL)[number]> {
  const found: Pick<LockHolder, (typeof OPTIONAL)[number]> = {}
  for (const name of OPTIONAL) {
    const value = from[name]
    if (typeof value === 'string' && (name !== 'person' || isName(value))) found[name] = value
  }
  return found
}

/**
 * A hold by this process, from now.
 * @param folder what `folderNumbers` gives of the folder that is locked
 * @param person who is at work, where that is known
 */
export const thisHolder = (now: Date, folder?: string, person?: string): LockHolder => ({
  token: randomBytes(12).toString('hex'),
  pid: process.pid,
  host: thisHost(),
  user: login(),
  since: now.toISOString(),
  ...optional({
    person: person === '' ? undefined : person,
    machine: thisMachine(),
    boot: thisBoot(),
    namespace: pidNamespace(),
    start: processStart(process.pid),
    folder,
  }),
})

export const writeHolder = (holder: LockHolder): string => `${JSON.stringify(holder)}\n`

/** Reads what a lock file says, once it was parsed; undefined when it is no hold. */
export function readHolder(json: unknown): LockHolder | undefined {
  if (typeof json !== 'object' || json === null) return undefined
  const fields = json as Readonly<Record<string, unknown>>
  const { token, pid, host, user, since } = fields
  if (typeof token !== 'string' || !TOKEN.test(token)) return undefined
  if (typeof pid !== 'number' || !Number.isSafeInteger(pid) || pid <= 0) return undefined
  if (!isName(host) || !isName(user) || !isName(since)) return undefined
  return { token, pid, host, user, since, ...optional(fields) }
}
