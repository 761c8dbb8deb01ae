import type { FoundFigure, SheetReadings } from '../../contract/readings.ts'
import type { FigureReading } from '../../core/reading/figure-reading.ts'

/** A figure of a sheet as it was told. */
export interface ToldFigure extends FoundFigure {
  /** As it was told first, where it was read again since: by that it has its place among the others. */
  first?: FigureReading
}

/** What was told of a sheet. */
export interface ToldReadings extends SheetReadings {
  figures: ToldFigure[]
}

/** What is known of a sheet after more was told of it. */
export function withNews(known: ToldReadings | undefined, told: SheetReadings): ToldReadings {
  const figures = new Map<number, ToldFigure>(known?.figures.map((figure) => [figure.id, figure]))
  for (const figure of told.figures) {
    const before = figures.get(figure.id)
    figures.set(figure.id, before === undefined ? figure : toldAgain(before, figure))
  }
  return { ...told, figures: [...figures.values()] }
}

function toldAgain(before: ToldFigure, { id, reading }: FoundFigure): ToldFigure {
  if (JSON.stringify(before.reading) === JSON.stringify(reading)) return before
  return { id, reading, first: before.first ?? before.reading }
}

/** What was told of a sheet, each figure with the place among the others that it has as it reads by now. */
export const asTheyReadNow = (told: ToldReadings): ToldReadings => ({
  ...told,
  figures: told.figures.map(({ id, reading }) => ({ id, reading })),
})
