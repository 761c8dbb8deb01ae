import type { Limits } from '../../../../contract/limits.ts'
import type { PictureProgress } from '../../../../contract/pictures.ts'
import type { Described } from '../cache/manifest.ts'
import type { PictureFolder } from '../cache/picture-folder.ts'
import type { Turns } from './turns.ts'

/** How far the pictures of a page are. */
export type PageProgress = Omit<PictureProgress, 'sheet'>

/** A page of a scan, and what its pictures are made with. */
export interface Page extends Described {
  /** What messages call its sheet. */
  sheet: string
  /** Finds the folder for the pictures, and what of them is there. */
  folder: () => Promise<PictureFolder>
  /** Finds the scan. @throws ServiceError with a sentence when it is not there */
  file: () => Promise<string>
  password: () => string | undefined
  limits: () => Limits
  /** The built program that makes pictures. */
  program: string | undefined
  turns: Turns
  progressed: (progress: PageProgress) => void
}
