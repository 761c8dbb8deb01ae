import { z } from 'zod'
import { QUANTITY_KINDS } from '../core/quantity/quantity-kind.ts'
import type { FigureReading } from '../core/reading/figure-reading.ts'
import { TITLE_FIELDS } from '../core/reading/labels/title-field.ts'
import type { TitleLabel } from '../core/reading/labels/title-labels.ts'

/** Sums of shares may be off by their rounding. */
const share = z
  .number()
  .min(0)
  .max(1 + 1e-6)

const upright = z.tuple([z.number(), z.number(), z.number(), z.number()])

const alternatives = z.array(z.strictObject({ text: z.string(), probability: share }))

/** A figure as it was read in a box of a page. */
export const figureReadingSchema: z.ZodType<FigureReading> = z.strictObject({
  box: upright,
  angle: z.number(),
  text: z.string().nullable(),
  asRead: z.string(),
  value: z.number().nullable(),
  kind: z.enum(QUANTITY_KINDS).nullable(),
  clear: z.boolean(),
  probability: share,
  alternatives,
  lattice: z.strictObject({ slots: z.array(z.strictObject({ alternatives, box: upright.optional() })) }),
})

/**
 * Round a figure, pixels of the page. x, y: its upper left corner. Upright, unless the angle of its lettering is given
 * with it: then turned by that about its centre, with its width along the lettering.
 */
export const figureBoxSchema = z.strictObject({
  x: z.number(),
  y: z.number(),
  width: z.number().gt(0),
  height: z.number().gt(0),
})

export type FigureBox = z.infer<typeof figureBoxSchema>

/** Degrees clockwise on the page by which lettering is turned from level, where that is known. */
export const letteringAngleSchema = z.number().min(-360).max(360)

/** A place on a page, pixels of it. */
export const pagePlaceSchema = z.strictObject({ x: z.number(), y: z.number() })

export type PagePlace = z.infer<typeof pagePlaceSchema>

/** How far the reading of a sheet is. */
export const readingProgressSchema = z.strictObject({
  state: z.enum(['unread', 'reading', 'ready', 'stopped', 'failed']),
  /** Boxes that were read, of those that were found so far: more may be found while `state` is `reading`. */
  done: z.int().min(0),
  of: z.int().min(0),
  /** The same in words, or why it stopped: a sentence. */
  sentence: z.string(),
})

export type ReadingProgress = z.infer<typeof readingProgressSchema>

/** A figure that was found on a sheet. id: the same whenever this sheet is read with this engine */
const foundFigureSchema = z.strictObject({ id: z.int().min(0), reading: figureReadingSchema })

export type FoundFigure = z.infer<typeof foundFigureSchema>

/** What the reading of a sheet rests on besides the strokes: how figures are written whose text is known. */
const handOfSheetSchema = z.strictObject({
  /** Whether figures are read with it. */
  on: z.boolean(),
  /** Figures taken on the sheet that it can be learned from. */
  known: z.int().min(0),
  /** What figures are read with, as a sentence. */
  sentence: z.string(),
})

export type HandOfSheet = z.infer<typeof handOfSheetSchema>

/** What was read of a sheet so far, as it stands on it: from above to below, from left to right. */
export const sheetReadingsSchema = z.strictObject({
  sheet: z.string(),
  progress: readingProgressSchema,
  hand: handOfSheetSchema,
  figures: z.array(foundFigureSchema),
})

export type SheetReadings = z.infer<typeof sheetReadingsSchema>

/** How far a sheet's reading is now, and the figures that were not told before, or that were read again. */
export const readingsNewsSchema = sheetReadingsSchema

/** What could stand in a field of a title block: words that a person may take over, or not. */
export const titleLabelsSchema: z.ZodType<TitleLabel[]> = z.array(
  z.strictObject({ field: z.enum(TITLE_FIELDS), text: z.string(), probability: share, box: upright }),
)
