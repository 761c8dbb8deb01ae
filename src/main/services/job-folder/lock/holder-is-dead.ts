import { ENDED, processStart } from '../../machine/process-start.ts'
import { hasEnded, thisHost, thisMachine } from '../../machine/this-machine.ts'
import type { LockHolder } from './lock-holder.ts'

const sameMachine = (holder: LockHolder): boolean => {
  if (holder.host !== thisHost()) return false
  const machine = thisMachine()
  return holder.machine === undefined || machine === undefined || holder.machine === machine
}

/**
 * True only when it is certain that the process which took the lock has ended: it ran on this machine, and its
 * pid is gone or belongs to a process started at another time. Of another machine nothing is certain.
 */
export function holderIsDead(holder: LockHolder): boolean {
  if (!sameMachine(holder)) return false
  const start = processStart(holder.pid)
  if (start === ENDED) return true
  if (start !== undefined && holder.start !== undefined) return start !== holder.start
  return hasEnded(holder.pid)
}
