import { z } from 'zod'
import { limitsSchema } from '../../../../contract/limits.ts'
import { reasonSchema } from '../../../../contract/reply.ts'
import { scanLookSchema } from '../../../../contract/scan-look.ts'
import { drawnFileSchema } from '../page/drawn-file.ts'
import { pageReadSchema } from '../page/page-read.ts'

const page = z.int().min(1)
const drawnAt = z.number().optional()

/** What is done with a scan in a process of its own. Pages from 1. */
const taskSchema = z.discriminatedUnion('do', [
  /** What is in it, from a page on, as far as can be told in a moment. */
  z.strictObject({ do: z.literal('look'), from: page }),
  /**
   * All of one page: decoded once where it is a picture. Without `page`: the first that is a sheet of its own.
   * drawnAt: dots per inch that a drawn page shall have.
   */
  z.strictObject({ do: z.literal('page'), page: page.optional(), drawnAt }),
  /** A small picture. side: its longer side at most, pixels */
  z.strictObject({ do: z.literal('thumbnail'), page, side: page }),
  /** A page of a PDF as a file in a folder that is there. */
  z.strictObject({ do: z.literal('draw'), page, drawnAt, folder: z.string() }),
])

export type ReadTask = z.infer<typeof taskSchema>

const orderSchema = z.strictObject({
  path: z.string(),
  /** What messages call the scan. */
  called: z.string(),
  limits: z.record(limitsSchema.keyof(), z.number()),
  password: z.string().optional(),
  task: taskSchema,
})

export type ReadOrder = z.infer<typeof orderSchema>

export const READ_PROTOCOL = {
  order: orderSchema,
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
