import type { Limits } from '../../../../contract/limits.ts'
import type { PageLook, ScanLook } from '../../../../contract/scan-look.ts'
import type { PageRead } from '../page/page-read.ts'
import type { DrawnFile } from '../pdf/draw/make-page-file.ts'

/** What the process that reads scans is to do with a scan. Pages from 1. */
export type ReadTask =
  /** What is in it, from a page on, as far as can be told in a moment. */
  | { do: 'look'; from: number }
  /**
   * All of one page: decoded once where it is a picture. Without `page`: the first that is a sheet of its own.
   * drawnAt: dots per inch that a drawn page shall have.
   */
  | { do: 'page'; page?: number; drawnAt?: number }
  /** A small picture. side: its longer side at most, pixels */
  | { do: 'thumbnail'; page: number; side: number }
  /** A page of a PDF as a file in a folder that is there. */
  | { do: 'draw'; page: number; drawnAt?: number; folder: string }

export interface ReadOrder<T extends ReadTask = ReadTask> {
  path: string
  /** What messages call the scan. */
  called: string
  limits: Limits
  password?: string
  task: T
}

export type LookedInto = Omit<ScanLook, 'upload' | 'name' | 'looked'> & { looked: PageLook[] }

export interface ReadAnswers {
  look: LookedInto
  page: PageRead
  thumbnail: Uint8Array
  draw: DrawnFile
}

export type ReadAnswer<T extends ReadTask> = ReadAnswers[T['do']]

export type ToReader = { id: number; order: ReadOrder }

export type FromReader =
  | { kind: 'ready' }
  | { kind: 'answer'; id: number; answer: ReadAnswers[keyof ReadAnswers] }
  /** A sentence for a person. */
  | { kind: 'refused'; id: number; sentence: string; locked: boolean }
  /** It ended itself because it used more memory than it may. */
  | { kind: 'memory' }
