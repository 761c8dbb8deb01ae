import type { PageSource } from './page/page-source.ts'
import type { BoxesRead, BoxesToRead } from './process/figure-protocol.ts'
import { type FigureReader, type FiguresWith, ReadingEnded } from './process/figure-reader.ts'

/** Boxes that are read in one go, so that several processes have their share of them. */
const AT_ONCE = 8

/**
 * Reads what is in boxes of a page, in their order.
 * @returns a reading a box; of the hand, what was known of it as the last of them were read
 * @throws ServiceError when it can't be read; the reason of the signal when it is given up
 */
export async function readBoxes(
  reader: FigureReader,
  source: PageSource,
  { boxes, context, known }: BoxesToRead,
  how: FiguresWith,
): Promise<BoxesRead> {
  const some: Promise<BoxesRead>[] = []
  for (let from = 0; from < boxes.length; from += AT_ONCE) {
    const part = boxes.slice(from, from + AT_ONCE)
    const read = (): Promise<BoxesRead> => reader.read(source, { boxes: part, context, known }, how)
    some.push(
      // A process that was ended from outside is no fault of these.
      read().catch((error: unknown) => {
        if (error instanceof ReadingEnded) return read()
        throw error
      }),
    )
  }
  const parts = await Promise.all(some)
  const { heard, hand } = parts.at(-1) ?? { heard: [], hand: 0 }
  return { readings: parts.flatMap(({ readings }) => readings), heard, hand }
}
