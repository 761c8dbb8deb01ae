import { readFileSync, readlinkSync } from 'node:fs'

/** It has ended and only waits for its parent to collect it. */
export const ENDED = 'ended'

const readProc = (path: string): string | undefined => {
  try {
    return readFileSync(path, 'latin1')
  } catch {
    return undefined
  }
}

/** A /proc that was mounted outside this process's PID namespace numbers processes otherwise than this process does. */
const isOwnProc = (): boolean => {
  try {
    return readlinkSync('/proc/self') === String(process.pid)
  } catch {
    return false
  }
}

/**
 * When a process was started: the boot and the clock ticks since it (proc(5), field 22 of /proc/PID/stat).
 * undefined: no such process, or this system has no /proc, or none for this PID namespace, or hides other people's
 * processes in it.
 */
export function processStart(pid: number): string | undefined {
  const stat = isOwnProc() ? readProc(`/proc/${pid}/stat`) : undefined
  if (stat === undefined) return undefined
  // The program's name, field 2, may hold spaces and brackets: count from the last bracket.
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ')
  const state = fields[0]
  if (state === 'Z' || state === 'X') return ENDED
  return `${readProc('/proc/sys/kernel/random/boot_id')?.trim() ?? ''}:${fields[19]}`
}
