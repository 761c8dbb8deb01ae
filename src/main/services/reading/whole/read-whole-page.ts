import type { Limits } from '../../../../contract/limits.ts'
import type { LengthContext } from '../../../../core/quantity/parse/parse-length.ts'
import type { FigureReading } from '../../../../core/reading/figure-reading.ts'
import type { GivenPage } from '../page/given-page.ts'
import type { FigureReader } from '../process/figure-reader.ts'
import { PageReading } from './page-reading.ts'

/**
 * Finds and reads all figures of a page, as it stands on it.
 * @param context what a bare number means
 * @throws ScantlingError when the page can't be read
 */
export async function readWholePage(
  reader: FigureReader,
  { page, size, dpi, source }: GivenPage,
  context: LengthContext,
  limits: Limits,
): Promise<FigureReading[]> {
  const reading = new PageReading({
    page,
    size,
    dpi,
    context,
    limits: () => limits,
    reader,
    source: async () => source,
    told: () => undefined,
  })
  await reading.begin()
  await reading.ended()
  return (await reading.figures()).map((figure) => figure.reading)
}
