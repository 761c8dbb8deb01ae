import { lookAtProcess, type ProcessLook } from '../../machine/look-at-process.ts'
import { ENDED } from '../../machine/process-start.ts'
import { MACHINES_OWN_NAMESPACE } from '../../machine/this-boot.ts'
import type { Here } from './here.ts'
import type { LockHolder } from './lock-holder.ts'

/** Why a hold locks nothing any more. */
export type WhyDead = 'process-ended' | 'earlier-boot' | 'other-folder'

/** How a hold stands, as far as that is certain from here. */
export type Standing = WhyDead | 'at-work' | 'not-known'

/**
 * How a hold stands. What is certain, and from what:
 *
 * - **The same boot** (`thisBoot`) is the same kernel, whatever the host is called by now and in whatever containers
 *   both are. Two things are certain then. If the folder's numbers are other than those that were locked, the lock came
 *   along with a copy. And within one PID namespace the number of a process and when it was started tell whether it is
 *   the one that locked. In another namespace the number means nothing, so nothing is known: neither that the holder is
 *   dead, nor that it lives.
 * - **Another boot** means that the holder is dead only where the machine is the same, and for that neither boot nor
 *   machine-id is enough by itself. Containers of one image may all have its machine-id, on many machines, and some are
 *   given a boot of their own: so both must be outside of any container. Machines that were set up from one copied
 *   disk may all have its machine-id too, but are then told apart by their names: so the name must be the same, or both
 *   must see the folder on a disk of their machine's own, where only one machine at a time can be at work.
 * - **Where there are no boots** (not Linux) the name of the host must do, with the number of the process.
 *
 * Of anything else, as a holder on another machine, nothing is known. A virtual machine that was copied while it ran is
 * not told from its copy.
 * @param look what there is of a process of this number here
 */
export function standingOf(
  holder: LockHolder,
  here: Here,
  look: (pid: number) => ProcessLook = lookAtProcess,
): Standing {
  if (holder.boot !== undefined && here.boot !== undefined) {
    if (holder.boot !== here.boot) return wasThisMachine(holder, here) ? 'earlier-boot' : 'not-known'
    if (differ(holder.folder, here.folder)) return 'other-folder'
    return isSame(holder.namespace, here.namespace) ? byProcess(holder, look(holder.pid)) : 'not-known'
  }
  const bootless = holder.boot === here.boot && holder.namespace === here.namespace
  const byName = bootless && holder.host === here.host && holder.machine === here.machine
  return byName ? byProcess(holder, look(holder.pid)) : 'not-known'
}

const isSame = (one: string | undefined, other: string | undefined): boolean =>
  one !== undefined && one === other

const differ = (one: string | undefined, other: string | undefined): boolean =>
  one !== undefined && other !== undefined && one !== other

const wasThisMachine = (holder: LockHolder, here: Here): boolean =>
  isSame(holder.machine, here.machine) &&
  holder.namespace === MACHINES_OWN_NAMESPACE &&
  here.namespace === MACHINES_OWN_NAMESPACE &&
  (holder.host === here.host || (holder.folder !== undefined && here.folder !== undefined))

function byProcess({ start }: LockHolder, process: ProcessLook): Standing {
  if (process === ENDED) return 'process-ended'
  if (start === undefined || process.start === undefined) return 'not-known'
  return start === process.start ? 'at-work' : 'process-ended'
}

/** Why a hold that stands so locks nothing any more; undefined where it may. */
export const whyDead = (standing: Standing): WhyDead | undefined =>
  standing === 'at-work' || standing === 'not-known' ? undefined : standing
