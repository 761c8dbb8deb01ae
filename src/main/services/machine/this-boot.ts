import { readFileSync, readlinkSync } from 'node:fs'
import { uptime } from 'node:os'

/**
 * What Linux gives at random to each boot of a kernel (random(4)); undefined elsewhere. Two processes that see the same
 * one run under the same kernel, in whatever containers. Two that see different ones need not run under different
 * kernels: some containers are given one of their own.
 */
export function thisBoot(): string | undefined {
  try {
    return readFileSync('/proc/sys/kernel/random/boot_id', 'latin1').trim() || undefined
  } catch {
    return undefined
  }
}

/** When this machine was started, milliseconds since 1970 by its clock as that is set now. */
export const bootedAt = (): number => Date.now() - uptime() * 1000

/**
 * The PID namespace of this process (namespaces(7)); undefined where the system has none. The number of a process means
 * something only within it. The number of a namespace is used again once that one is gone with all its processes.
 */
export function pidNamespace(): string | undefined {
  try {
    return readlinkSync('/proc/self/ns/pid')
  } catch {
    return undefined
  }
}

/** The PID namespace that Linux begins with: the machine itself, and no container (PROC_PID_INIT_INO). */
export const MACHINES_OWN_NAMESPACE = 'pid:[4026531836]'
