import type { Job } from '../../../../core/job/model/types.ts'
import type { HeldHistory } from './held-history.ts'
import type { LineRef, Tip } from './kept-line.ts'
import type { Step } from './undo-stacks.ts'

/** The history of an open job. */
export interface KeptHistory {
  readonly path: string
  /** The last line. */
  readonly tip: Tip
  /** Sees to it that it is on disk. */
  ready(): Promise<void>
  /** Sees that it still is what this session read and wrote. @throws ChangedByAnother */
  mustBeOurs(): Promise<void>
  /**
   * Appends whole lines and returns when they are on disk.
   * @throws ServiceError when they could not be written; it is then as it was before
   * @throws FolderBroken when it could not even be put back; ChangedByAnother when it is not this session's any more
   */
  append(text: string, tip: Tip): Promise<void>
  /**
   * What can be undone or made again by a line; null where it can't be read any more.
   * @param job as it stands when that is next, by which the edit is called
   */
  stepAt(ref: LineRef, job: Job): Promise<Step | null>
  /** The longest chain of whole lines up to an acknowledged one that is still known, on disk or in memory. */
  held(upTo: Tip): Promise<HeldHistory>
  close(): Promise<void>
}
