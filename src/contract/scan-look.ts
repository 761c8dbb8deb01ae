import { z } from 'zod'

const pixels = z.int().min(1)

/** What a page of a scan file holds. */
export const pageLookSchema = z.strictObject({
  page: z.int().min(1),
  /** scanned: it has the pixels of a picture. drawn: it has lines and lettering, and gets as many pixels as one likes. */
  made: z.enum(['scanned', 'drawn']),
  /** Pixels of the sheet that it would make; of a drawn page at `drawnAt`. */
  width: pixels,
  height: pixels,
  /** Pixels per inch, where the file says so. */
  dpi: z.number().optional(),
  /** Of a drawn page: dots per inch that it would be drawn at unless another number is chosen. */
  drawnAt: z.number().optional(),
  /** Of a drawn page: size of the paper in inches. */
  paper: z.strictObject({ width: z.number(), height: z.number() }).optional(),
  /** Exif orientation, 2 to 8. */
  orientation: z.int().optional(),
  /** Why no sheet can be made of it, a sentence; absent where one can. */
  fault: z.string().optional(),
})

export type PageLook = z.infer<typeof pageLookSchema>

/** What a scan file that was handed over holds. */
export const scanLookSchema = z.strictObject({
  upload: z.string(),
  /** What the person's system calls it. */
  name: z.string(),
  format: z.enum(['png', 'jpeg', 'webp', 'tiff', 'pdf']),
  /** Whether it waits for a password; then nothing is known of its pages. */
  locked: z.boolean(),
  /** Pages in the file. */
  pages: z.int().min(0),
  /**
   * Those of them that are no sheets of their own, because the file says that they are reduced copies of another page, or
   * masks; absent where there are none. They are not among `looked`.
   */
  leftOut: z.array(z.int().min(1)).optional(),
  /** What is known of the pages that were looked at. */
  looked: z.array(pageLookSchema),
})

export type ScanLook = z.infer<typeof scanLookSchema>
