import { z } from 'zod'
import { pageLookSchema } from '../../../../contract/scan-look.ts'
import { scanFormatSchema } from '../file/scan-format.ts'

/** What was read of one page of a scan. */
export const pageReadSchema = z.strictObject({
  format: scanFormatSchema,
  /** Pages in the file that are sheets of their own. */
  pages: z.int(),
  facts: pageLookSchema,
  /** What a person should know of the page, one sentence each. */
  remarks: z.array(z.string()),
})

export type PageRead = z.infer<typeof pageReadSchema>
