import { ENDED, processStart } from './process-start.ts'
import { hasEnded } from './this-machine.ts'

/** What there is of a process by its number: nothing any more, or one that was started then, where that can be seen. */
export type ProcessLook = typeof ENDED | { start: string | undefined }

/** Looks for a process by its number, as this process's own PID namespace counts. */
export function lookAtProcess(pid: number): ProcessLook {
  const start = processStart(pid)
  if (start === ENDED || (start === undefined && hasEnded(pid))) return ENDED
  return { start }
}
