import type { LengthContext } from '../../../core/quantity/parse/parse-length.ts'
import type { BoxToRead } from '../../../core/reading/box/box-to-read.ts'
import type { FigureReading } from '../../../core/reading/figure-reading.ts'
import type { PageSource } from './page/page-source.ts'
import { type FigureReader, type FiguresWith, ReadingEnded } from './process/figure-reader.ts'

/** Boxes that are read in one go, so that several processes have their share of them. */
const AT_ONCE = 8

/**
 * Reads what is in boxes of a page, in their order.
 * @param context what a bare number means
 * @throws ServiceError when it can't be read; the reason of the signal when it is given up
 */
export async function readBoxes(
  reader: FigureReader,
  source: PageSource,
  boxes: readonly BoxToRead[],
  context: LengthContext,
  how: FiguresWith,
): Promise<FigureReading[]> {
  const some: Promise<FigureReading[]>[] = []
  for (let from = 0; from < boxes.length; from += AT_ONCE) {
    const read = (): Promise<FigureReading[]> =>
      reader.read(source, boxes.slice(from, from + AT_ONCE), context, how)
    some.push(
      // A process that was ended from outside is no fault of these.
      read().catch((error: unknown) => {
        if (error instanceof ReadingEnded) return read()
        throw error
      }),
    )
  }
  return (await Promise.all(some)).flat()
}
