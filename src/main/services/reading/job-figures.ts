import type { Limits } from '../../../contract/limits.ts'
import type { PagePlace, SheetReadings } from '../../../contract/readings.ts'
import type { Sheet } from '../../../core/job/model/types.ts'
import { element } from '../../../core/linear-algebra/element.ts'
import type { LengthContext } from '../../../core/quantity/parse/parse-length.ts'
import type { BoxToRead } from '../../../core/reading/box/box-to-read.ts'
import type { FigureReading } from '../../../core/reading/figure-reading.ts'
import { type TitleLabel, titleLabels } from '../../../core/reading/labels/title-labels.ts'
import { pictureVersion } from '../pictures/layout/picture-names.ts'
import { scanFault } from '../scans/kept/scan-fault.ts'
import type { SheetScan } from '../scans/kept/verify-scans.ts'
import { ServiceError } from '../service-error.ts'
import type { PagePart } from '../words/page-in-words.ts'
import { reason } from '../words/services-words.ts'
import { engineVersion } from './kept/engine-version.ts'
import { ReadingsFile } from './kept/readings-file.ts'
import { JobPage } from './page/job-page.ts'
import type { FigureReader } from './process/figure-reader.ts'
import { readBoxes } from './read-boxes.ts'
import { mustHoldFigure } from './sheet-boxes.ts'
import { PageReading } from './whole/page-reading.ts'
import { titleBlockOf } from './words/title-block.ts'

export interface JobFiguresOf {
  /** The job folder. */
  job: string
  /** The sheet of an id and how its scan was found; undefined when the job has none. */
  sheet: (id: string) => { sheet: Sheet; scan: SheetScan | undefined } | undefined
  /** What a bare number means in the job. */
  context: () => LengthContext
  /** Makes a folder of this process's own, removed in the end. */
  temporary: () => Promise<string>
  /** Where this machine keeps what was read, of all jobs. */
  kept: string
  limits: () => Limits
  /** What opens a locked scan, by its SHA-256. */
  password: (sha256: string) => string | undefined
  reader: FigureReader
  /** @param news how far a sheet is, and the figures that were not told before */
  told: (news: SheetReadings) => void
}

interface OpenPage {
  page: JobPage
  /** By what a bare number means. */
  readings: Map<string, PageReading>
}

/** The figures of the sheets of a job, as they are read. */
export class JobFigures {
  readonly #of: JobFiguresOf
  readonly #pages = new Map<string, OpenPage>()
  readonly #closing = new AbortController()

  constructor(of: JobFiguresOf) {
    this.#of = of
  }

  /**
   * Reads the figure in a box of a sheet.
   * @throws ServiceError when the job has no such sheet, there can be no figure in such a box, or the page can't be read
   */
  async figure(id: string, box: BoxToRead): Promise<FigureReading> {
    const sheet = this.#mustHave(id)
    mustHoldFigure(box, sheet.scan)
    const { reader, context, limits } = this.#of
    const { signal } = this.#closing
    const how = { page: named(sheet), limits: limits(), signal }
    const source = await this.#pageOf(sheet).page.source(signal)
    return element(await readBoxes(reader, source, [box], context(), how), 0)
  }

  /**
   * Begins to find and read all figures of a sheet, or goes on with it.
   * @param near what is looked at, pixels of the page
   * @throws ServiceError when the job has no such sheet, or its scan can't be read
   */
  async begin(id: string, near?: PagePlace): Promise<SheetReadings> {
    const reading = await this.#readingOf(this.#mustHave(id))
    await reading.begin(near)
    return tellOf(id, reading)
  }

  /** Stops the reading of a sheet; what was read stays. @throws ServiceError when the job has no such sheet */
  async stop(id: string): Promise<SheetReadings> {
    const reading = await this.#readingOf(this.#mustHave(id))
    await reading.stop()
    return tellOf(id, reading)
  }

  /** What was read of a sheet so far, now or another time. @throws ServiceError when the job has no such sheet */
  async of(id: string): Promise<SheetReadings> {
    return tellOf(id, await this.#readingOf(this.#mustHave(id)))
  }

  /**
   * What the title block of a sheet says of its drawing, as far as it is where title blocks are.
   * @throws ServiceError when the job has no such sheet, or its scan can't be read
   */
  async labels(id: string): Promise<TitleLabel[]> {
    const sheet = this.#mustHave(id)
    const { signal } = this.#closing
    const source = await this.#pageOf(sheet).page.source(signal)
    const { area, level } = titleBlockOf(sheet.scan)
    const how = { page: named(sheet), limits: this.#of.limits(), signal }
    return titleLabels(await this.#of.reader.words(source, area, level, how))
  }

  /** Stops everything and waits until nothing runs any more. */
  async close(): Promise<void> {
    this.#closing.abort(new ServiceError(reason('workbench.closed')))
    for (const { page, readings } of this.#pages.values()) {
      await Promise.all([...readings.values()].map((reading) => reading.close()))
      await page.close()
    }
  }

  #mustHave(id: string): Sheet {
    const found = this.#of.sheet(id)
    if (found === undefined || this.#closing.signal.aborted)
      throw new ServiceError(reason('workbench.no-such-sheet'))
    const fault = scanFault(found.sheet, found.scan, this.#of.limits())
    if (fault !== undefined) throw new ServiceError(fault)
    return found.sheet
  }

  #pageOf(sheet: Sheet): OpenPage {
    const key = JSON.stringify([sheet.id, pictureVersion(sheet.scan)])
    const known = this.#pages.get(key)
    if (known !== undefined) return known
    const { job, temporary, limits, password } = this.#of
    const word = (): string | undefined => password(sheet.scan.sha256.toLowerCase())
    const page = new JobPage({ job, sheet, temporary, limits, password: word })
    const open = { page, readings: new Map<string, PageReading>() }
    this.#pages.set(key, open)
    return open
  }

  async #readingOf(sheet: Sheet): Promise<PageReading> {
    const { kept, limits, reader, told, context: contextNow } = this.#of
    const version = await engineVersion()
    const { page, readings } = this.#pageOf(sheet)
    const context = contextNow()
    const key = JSON.stringify(context)
    const known = readings.get(key)
    if (known !== undefined) return known
    const { scan } = sheet
    const reading: PageReading = new PageReading({
      page: named(sheet),
      size: { width: scan.width, height: scan.height },
      dpi: scan.dpi,
      context,
      limits,
      reader,
      source: (signal) => page.source(signal),
      kept: new ReadingsFile(kept, [scan.sha256.toLowerCase(), pictureVersion(scan), version, key]),
      told: (progress, figures) => told({ sheet: sheet.id, progress, figures }),
    })
    readings.set(key, reading)
    return reading
  }
}

const named = ({ scan }: Sheet): PagePart => ({ scan: scan.file, page: scan.page === 1 ? null : scan.page })

const tellOf = async (sheet: string, reading: PageReading): Promise<SheetReadings> => ({
  sheet,
  progress: await reading.progress(),
  figures: await reading.figures(),
})
