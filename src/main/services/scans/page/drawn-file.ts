import { z } from 'zod'
import { pixelSizeSchema } from './pixel-size.ts'

/** What a file that was drawn is called, in its folder, and its size in pixels. */
export const drawnFileSchema = pixelSizeSchema.extend({ path: z.string() })

export type DrawnFile = z.infer<typeof drawnFileSchema>
