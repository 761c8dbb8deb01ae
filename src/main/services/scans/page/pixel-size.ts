import { z } from 'zod'
import { ServiceError } from '../../service-error.ts'

/** Of a picture, whole numbers. */
export const pixelSizeSchema = z.strictObject({ width: z.int().min(1), height: z.int().min(1) })

export type PixelSize = z.infer<typeof pixelSizeSchema>

/** Whether a page has the pixels that are said of it. */
export const hasSize = (found: PixelSize, said: PixelSize): boolean =>
  found.width === said.width && found.height === said.height

/**
 * A page must have the pixels that the job says: a mark is a place among them.
 * @param page what the sentence calls it, to begin with
 * @throws ServiceError when it has others
 */
export function mustHaveSize(page: string, found: PixelSize, said: PixelSize): void {
  if (hasSize(found, said)) return
  throw new ServiceError(
    `${page} has ${found.width} × ${found.height} pixels, and the job says ${said.width} × ${said.height}, ` +
      'so no mark would lie where it was picked: bring the scan in as a new sheet.',
  )
}
