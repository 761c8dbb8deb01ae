import type { Limits } from '../../../contract/limits.ts'
import type { WorkbenchPlaces } from '../places/places.ts'
import type { ChildProgram } from '../process/child.ts'

export interface WorkbenchOptions {
  host: 'electron' | 'local'
  version: string
  places: WorkbenchPlaces
  /** The folder below which job folders are chosen; the person's own home unless given. */
  home?: string
  /** Lets a person choose a folder with the system's own dialog; undefined: the host has none. */
  chooseJobFolder?: () => Promise<string | undefined>
  /** Told each job folder that was opened. */
  folderOpened?: (folder: string) => void
  now?: () => Date
  /** Told one line for each ask that was refused or failed. */
  log: (line: string) => void
  /** Milliseconds without an edit after which job.json is written anew. */
  quiet?: number
  /** How much is taken in where a person set no limits; what is usual unless given. */
  limits?: Limits
  /** The built program that cuts tiles; found by itself unless given. */
  pyramidProgram?: string
  /** The program that reads figures; found by itself unless given. */
  figureProgram?: ChildProgram
}
