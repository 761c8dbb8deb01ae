import { z } from 'zod'

/** How much is taken in; a person may set each otherwise. */
export const limitsSchema = z.strictObject({
  /** Of a page. */
  pixels: z.int().min(1_000_000).max(4_000_000_000),
  /** Of a scan file that are looked at. */
  pages: z.int().min(1).max(10_000),
  /** Bytes of a scan file. */
  bytes: z
    .int()
    .min(1_000_000)
    .max(64 * 1024 ** 3),
  /** Bytes that the process that reads a scan may use. */
  memory: z
    .int()
    .min(256 * 1024 ** 2)
    .max(64 * 1024 ** 3),
  /** That looking into a scan, or at one of its pages, may take. */
  seconds: z.int().min(5).max(3600),
})

export type Limits = z.infer<typeof limitsSchema>

/** Common practice, no source: an E-size sheet at 1200 dpi has 2.15 thousand million pixels, at 600 dpi a quarter of it. */
export const LIMITS: Limits = {
  pixels: 1_000_000_000,
  pages: 2000,
  bytes: 2 * 1024 ** 3,
  memory: 2 * 1024 ** 3,
  seconds: 120,
}
