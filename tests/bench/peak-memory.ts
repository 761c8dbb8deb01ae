import { readdir, readFile } from 'node:fs/promises'

const status = (process: number | string): Promise<string> =>
  readFile(`/proc/${process}/status`, 'utf8').catch(() => '')

/** The most memory that a process has had, megabytes; 0 when it has ended. Linux. */
export async function peakMemory(process: number | string): Promise<number> {
  const kilobytes = /^VmHWM:\s+(\d+) kB$/m.exec(await status(process))?.[1]
  return Number(kilobytes ?? 0) / 1024
}

/** The processes that one started and that still run. Linux. */
export async function children(parent: number): Promise<string[]> {
  const numbers = (await readdir('/proc')).filter((name) => /^\d+$/.test(name))
  const isChild = new RegExp(`^PPid:\\s+${parent}$`, 'm')
  const found = await Promise.all(numbers.map(async (name) => (isChild.test(await status(name)) ? name : '')))
  return found.filter((name) => name !== '')
}
