import { z } from 'zod'
import { reasonSchema } from '../../../../contract/reply.ts'
import { pageLookSchema, scanLookSchema } from '../../../../contract/scan-look.ts'
import type { AnyReason } from '../../../../core/words/reason.ts'

/** What was read of one page of a scan, of which a sheet can be made. */
export const pageReadSchema = z.strictObject({
  format: scanLookSchema.shape.format,
  /** Pages in the file that are sheets of their own. */
  pages: z.int(),
  facts: pageLookSchema.omit({ fault: true }),
  /** What a person should know of the page. */
  remarks: z.array(reasonSchema),
})

export type PageRead = z.infer<typeof pageReadSchema>

/** What was found of a page. fault: why no sheet can be made of it */
export interface PageFound extends PageRead {
  fault?: AnyReason | undefined
}
