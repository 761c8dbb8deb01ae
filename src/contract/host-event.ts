import type { BenchState, Kept } from './bench-state.ts'
import type { PictureProgress } from './pictures.ts'

/** Something that a host's own menu asks the window to do. */
export type WindowCommand =
  | 'undo'
  | 'redo'
  | 'bring-in-scan'
  | 'close-job'
  | 'zoom-in'
  | 'zoom-out'
  | 'whole-sheet'

/** What a host tells its windows without being asked. */
export type HostEvent =
  /** Another job is open, or none. */
  | { kind: 'bench'; state: BenchState }
  /** Edits came to disk, from whichever window. */
  | { kind: 'kept'; kept: Kept }
  | { kind: 'pictures'; progress: PictureProgress }
  | { kind: 'command'; command: WindowCommand }
