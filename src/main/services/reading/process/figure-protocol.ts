import { z } from 'zod'
import { figureReadingSchema } from '../../../../contract/readings.ts'
import { reasonSchema } from '../../../../contract/reply.ts'
import type { LengthContext } from '../../../../core/quantity/parse/parse-length.ts'
import type { BoxToRead } from '../../../../core/reading/box/box-to-read.ts'
import type { KnownFigure } from '../../../../core/reading/box/known-figure.ts'
import type { FigureReading } from '../../../../core/reading/figure-reading.ts'
import type { SeenWord } from '../../../../core/reading/labels/seen-word.ts'
import type { PageArea } from '../../pictures/layout/block.ts'
import type { PageSource } from '../page/page-source.ts'

/** Where a figure is, or may be. */
export const boxToReadSchema: z.ZodType<BoxToRead> = z.strictObject({
  x: z.number(),
  y: z.number(),
  width: z.number().gt(0),
  height: z.number().gt(0),
  angle: z.number().optional(),
  digitHeight: z.number().gt(0).optional(),
})

/** Rows of a page at some level: `from` to `to`, the last one not among them. */
export interface Rows {
  from: number
  to: number
}

/** Boxes of a page, and what is known of it. */
export interface BoxesToRead {
  boxes: readonly BoxToRead[]
  /** What a bare number means. */
  context: LengthContext
  /** Figures of the page that somebody has read, those that matter most first: of its hand as much is learned. */
  known: readonly KnownFigure[]
}

/** What was read in boxes, and by which hand. */
export interface BoxesRead {
  /** One reading a box. */
  readings: FigureReading[]
  /** Places of the known figures that had been looked at by then, whether they taught anything or not. */
  heard: number[]
  /** How many of those the hand was learned from; 0 where it was read as of nobody in particular. */
  hand: number
}

/** What is done with figures in a process of its own. */
export type FigureTask =
  /** Where there may be figures, by the page as it is with its sides halved so many times. rows: of that level, whose figures are wanted */
  | { do: 'find'; level: number; rows: Rows; context: LengthContext }
  /** Reads what is in boxes */
  | ({ do: 'read' } & BoxesToRead)
  /** The words on a part of the page. area: of the page as it is with its sides halved so many times */
  | { do: 'words'; area: PageArea; level: number }

export interface FigureOrder {
  page: PageSource
  task: FigureTask
}

export const FIGURE_PROTOCOL = {
  news: z.never(),
  /** Why not, as the end of a sentence. */
  refusal: z.strictObject({ because: reasonSchema }),
}

const seenWordSchema: z.ZodType<SeenWord> = z.strictObject({
  text: z.string(),
  probability: z.number().min(0).max(1),
  box: z.tuple([z.number(), z.number(), z.number(), z.number()]),
})

/** What each task is answered with: what was found, what was read in so many boxes, which words there are. */
export const FIGURE_ANSWERS = {
  find: z.array(boxToReadSchema),
  read: (boxes: number, known: number): z.ZodType<BoxesRead> =>
    z.strictObject({
      readings: z.array(figureReadingSchema).length(boxes),
      heard: z
        .array(
          z
            .int()
            .min(0)
            .max(Math.max(0, known - 1)),
        )
        .max(known),
      hand: z.int().min(0).max(known),
    }),
  words: z.array(seenWordSchema),
}
