import { z } from 'zod'

/** Of a picture, whole numbers. */
export const pixelSizeSchema = z.strictObject({ width: z.int().min(1), height: z.int().min(1) })

export type PixelSize = z.infer<typeof pixelSizeSchema>
