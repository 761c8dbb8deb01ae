import { z } from 'zod'
import type { Limits } from '../../../../contract/limits.ts'
import { reasonSchema } from '../../../../contract/reply.ts'
import { scanLookSchema } from '../../../../contract/scan-look.ts'
import { drawnFileSchema } from '../page/drawn-file.ts'
import { pageReadSchema } from '../page/page-read.ts'

/** What is done with a scan in a process of its own. Pages from 1. */
export type ReadTask =
  /** What is in it, from a page on, as far as can be told in a moment. */
  | { do: 'look'; from: number }
  /**
   * All of one page: decoded once where it is a picture. Without `page`: the first that is a sheet of its own.
   * drawnAt: dots per inch that a drawn page shall have.
   */
  | { do: 'page'; page?: number | undefined; drawnAt?: number | undefined }
  /** A small picture. side: its longer side at most, pixels */
  | { do: 'thumbnail'; page: number; side: number }
  /** A page of a PDF as a file in a folder that is there. */
  | { do: 'draw'; page: number; drawnAt?: number | undefined; folder: string }

export interface ReadOrder {
  path: string
  /** What messages call the scan. */
  called: string
  limits: Limits
  password?: string | undefined
  task: ReadTask
}

export const READ_PROTOCOL = {
  news: z.never(),
  /** locked: it wants a password, or another one */
  refusal: z.strictObject({ because: reasonSchema, locked: z.boolean() }),
}

/** What each task is answered with. */
export const READ_ANSWERS = {
  look: scanLookSchema.omit({ upload: true, name: true }),
  page: pageReadSchema,
  /** JPEG. */
  thumbnail: z.custom<Uint8Array>((bytes) => bytes instanceof Uint8Array),
  draw: drawnFileSchema,
}

export type LookedInto = z.infer<typeof READ_ANSWERS.look>
export type ReadAnswers = { [Do in ReadTask['do']]: z.infer<(typeof READ_ANSWERS)[Do]> }
