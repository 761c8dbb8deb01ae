import { z } from 'zod'

const sheet = z.string()

/** One step of the pyramid: `level` 0 is the scan as it is, each next one half as large. */
const pyramidLevelSchema = z.strictObject({
  level: z.int(),
  width: z.int(),
  height: z.int(),
  columns: z.int(),
  rows: z.int(),
})

export type PyramidLevel = z.infer<typeof pyramidLevelSchema>

/** How far the pictures of a sheet are made. */
export const pictureProgressSchema = z.strictObject({
  sheet,
  state: z.enum(['overview', 'tiles', 'ready', 'stopped', 'failed']),
  /** Share of the work that is done, 0 to 1. */
  done: z.number(),
  /** What is being done, or why it stopped: a sentence. */
  sentence: z.string(),
  /** Whether the scan is locked and waits for its password (`unlock`). */
  locked: z.boolean().optional(),
  /** As `SheetPictures` has it; absent as long as it is not known. */
  exact: z.boolean().optional(),
})

export type PictureProgress = z.infer<typeof pictureProgressSchema>

/** What can be shown of a sheet. */
export const sheetPicturesSchema = z.strictObject({
  sheet,
  width: z.int(),
  height: z.int(),
  /** Names this very scan, so that a browser may keep what it fetched. */
  version: z.string(),
  /** Size of the picture of the whole sheet that is there first. */
  overview: z.strictObject({ width: z.int(), height: z.int() }),
  levels: z.array(pyramidLevelSchema),
  /** Whether the tiles of level 0 have the very values of the scan, in grey; else they come near (JPEG of a colour scan). false as well as long as it is not known, which progress tells. */
  exact: z.boolean(),
  progress: pictureProgressSchema,
})

export type SheetPictures = z.infer<typeof sheetPicturesSchema>
