import { readdir, readFile } from 'node:fs/promises'

/** A process that a program began, itself or by another, as the system has it. */
export interface ProcessBelow {
  pid: number
  /** As it was begun, with its arguments. */
  command: string
  /** Seconds of processor that it had. Linux counts them in hundredths. */
  processor: number
}

/** What POSIX systems on Linux count a process's time in: `getconf CLK_TCK`. */
const TICKS = 100

/** The processes below one that live now. Linux. */
export async function processesBelow(pid: number): Promise<ProcessBelow[]> {
  const children = await childrenOf(pid)
  const all = await Promise.all(
    children.map(async (child) => {
      const one = await processOf(child)
      return one === undefined ? [] : [one, ...(await processesBelow(child))]
    }),
  )
  return all.flat()
}

/** @returns nothing where it has ended meanwhile */
async function childrenOf(pid: number): Promise<number[]> {
  const tasks = await readdir(`/proc/${pid}/task`).catch(() => [])
  const lists = await Promise.all(
    tasks.map((task) => readFile(`/proc/${pid}/task/${task}/children`, 'utf8').catch(() => '')),
  )
  return lists.flatMap((list) => list.split(' ').filter(Boolean).map(Number))
}

async function processOf(pid: number): Promise<ProcessBelow | undefined> {
  try {
    const [stat, line] = await Promise.all([
      readFile(`/proc/${pid}/stat`, 'utf8'),
      readFile(`/proc/${pid}/cmdline`, 'utf8'),
    ])
    // The name, in brackets, may hold blanks; user and system time are the 14th and 15th of proc(5).
    const [user, system] = stat
      .slice(stat.lastIndexOf(')') + 2)
      .split(' ')
      .slice(11, 13)
    return {
      pid,
      command: line.split('\0').join(' ').trim(),
      processor: (Number(user) + Number(system)) / TICKS,
    }
  } catch {
    return undefined
  }
}
