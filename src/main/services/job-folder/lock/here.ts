import { bootedAt, pidNamespace, thisBoot } from '../../machine/this-boot.ts'
import { thisHost, thisMachine } from '../../machine/this-machine.ts'
import { folderNumbers } from './folder-numbers.ts'

/** Where a lock is looked at from: this machine, as far as it can be told from others, and the folder it is in. */
export interface Here {
  host: string
  /** The machine's own identity, where the system has one. */
  machine: string | undefined
  boot: string | undefined
  /** The PID namespace of this process. */
  namespace: string | undefined
  /** When this machine was started, milliseconds since 1970. */
  bootedAt: number
  /** The numbers of the folder, where it lies on a disk of this machine's own. */
  folder: string | undefined
}

export const hereIn = async (folder: string): Promise<Here> => ({
  host: thisHost(),
  machine: thisMachine(),
  boot: thisBoot(),
  namespace: pidNamespace(),
  bootedAt: bootedAt(),
  folder: await folderNumbers(folder),
})
