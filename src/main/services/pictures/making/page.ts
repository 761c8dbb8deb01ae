import type { Limits } from '../../../../contract/limits.ts'
import type { PictureProgress } from '../../../../contract/pictures.ts'
import type { Labelled } from '../../../../core/job/ids/label.ts'
import type { WorkQueue } from '../../process/work-queue.ts'
import type { Described } from '../cache/manifest.ts'
import type { PictureFolder } from '../cache/picture-folder.ts'
import type { MakePyramid } from '../process/pyramids.ts'

/** How far the pictures of a page are. */
export type PageProgress = Omit<PictureProgress, 'sheet'>

/** A page of a scan, and what its pictures are made with. */
export interface Page extends Described {
  /** Its sheet, as messages call it. */
  sheet: Labelled
  /** Finds the folder for the pictures, and what of them is there. */
  folder: () => Promise<PictureFolder>
  /** Finds the scan. @throws ServiceError with a sentence when it is not there */
  file: () => Promise<string>
  password: () => string | undefined
  limits: () => Limits
  make: MakePyramid
  /** The sheets of a job are cut one at a time. */
  queue: WorkQueue
  progressed: (progress: PageProgress) => void
}
