import type { Limits } from '../../../contract/limits.ts'
import type { HandOfSheet, PagePlace, SheetReadings } from '../../../contract/readings.ts'
import { boxesLookedAt } from '../../../core/job/figures/looked-at.ts'
import { lengthContext } from '../../../core/job/model/length-context.ts'
import type { Job, Sheet } from '../../../core/job/model/types.ts'
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
import { knownFigures } from './hand/known-figures.ts'
import { SheetHand } from './hand/sheet-hand.ts'
import { engineVersion } from './kept/engine-version.ts'
import { ReadingsFile } from './kept/readings-file.ts'
import { JobPage } from './page/job-page.ts'
import { mustHoldFigure } from './page/sheet-boxes.ts'
import type { FigureReader } from './process/figure-reader.ts'
import { readBoxes } from './read-boxes.ts'
import { PageReading } from './whole/page-reading.ts'
import { titleBlockOf } from './words/title-block.ts'

export interface JobFiguresOf {
  /** The job folder. */
  job: string
  /** The sheet of an id and how its scan was found; undefined when the job has none. */
  sheet: (id: string) => { sheet: Sheet; scan: SheetScan | undefined } | undefined
  /** What the job says by now. */
  says: () => Job
  /** Makes a folder of this process's own, removed in the end. */
  temporary: () => Promise<string>
  /** Where this machine keeps what was read, of all jobs. */
  kept: string
  limits: () => Limits
  /** What opens a locked scan, by its SHA-256. */
  password: (sha256: string) => string | undefined
  reader: FigureReader
  /** @param news how far a sheet is, and the figures that were not told before, or were read again */
  told: (news: SheetReadings) => void
}

interface OpenPage {
  sheet: Sheet
  page: JobPage
  /** By what a bare number means. */
  readings: Map<string, PageReading>
}

/** The figures of the sheets of a job, as they are read. */
export class JobFigures {
  readonly #of: JobFiguresOf
  readonly #pages = new Map<string, OpenPage>()
  /** By the id of the sheet. */
  readonly #hands = new Map<string, SheetHand>()
  /** What was said of them last. */
  readonly #said = new Map<string, string>()
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
    const { reader, limits } = this.#of
    const { signal } = this.#closing
    const how = { page: named(sheet), limits: limits(), signal }
    const source = await this.#pageOf(sheet).page.source(signal)
    const hand = this.#handOf(id)
    const what = { boxes: [box], context: this.#context, known: hand.known }
    const { readings, heard, hand: learned } = await readBoxes(reader, source, what, how)
    const before = hand.told.sentence
    hand.heard(learned, heard.length)
    if (hand.told.sentence !== before) await this.#tellHand(sheet)
    return element(readings, 0)
  }

  /**
   * Has figures of a sheet read with its hand, or without, from now on.
   * @throws ServiceError when the job has no such sheet
   */
  async withHand(id: string, on: boolean): Promise<SheetReadings> {
    const sheet = this.#mustHave(id)
    const reading = await this.#readingOf(sheet)
    this.#handOf(id).on = on
    await reading.handChanged()
    await this.#tellHand(sheet)
    return this.#tellOf(id, reading)
  }

  /** The job is another: what its figures show of a hand may be, too. What was read of its sheets goes on from there. */
  async jobChanged(): Promise<void> {
    const key = JSON.stringify(this.#context)
    for (const { sheet, readings } of this.#pages.values()) {
      const reading = readings.get(key)
      if (reading === undefined || this.#closing.signal.aborted) continue
      await reading.handChanged()
      const { sentence } = this.#handOf(sheet.id).told
      if (this.#said.get(sheet.id) !== sentence) await this.#tellHand(sheet)
    }
  }

  /**
   * Begins to find and read all figures of a sheet, or goes on with it.
   * @param near what is looked at, pixels of the page
   * @throws ServiceError when the job has no such sheet, or its scan can't be read
   */
  async begin(id: string, near?: PagePlace): Promise<SheetReadings> {
    const reading = await this.#readingOf(this.#mustHave(id))
    await reading.begin(near)
    return this.#tellOf(id, reading)
  }

  /** Stops the reading of a sheet; what was read stays. @throws ServiceError when the job has no such sheet */
  async stop(id: string): Promise<SheetReadings> {
    const reading = await this.#readingOf(this.#mustHave(id))
    await reading.stop()
    return this.#tellOf(id, reading)
  }

  /** What was read of a sheet so far, now or another time. @throws ServiceError when the job has no such sheet */
  async of(id: string): Promise<SheetReadings> {
    return this.#tellOf(id, await this.#readingOf(this.#mustHave(id)))
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
    const open = { sheet, page, readings: new Map<string, PageReading>() }
    this.#pages.set(key, open)
    return open
  }

  async #readingOf(sheet: Sheet): Promise<PageReading> {
    const { kept, limits, reader, told } = this.#of
    const version = await engineVersion()
    const { page, readings } = this.#pageOf(sheet)
    const context = this.#context
    const key = JSON.stringify(context)
    const known = readings.get(key)
    if (known !== undefined) return known
    const { scan } = sheet
    const hand = this.#handOf(sheet.id)
    const reading: PageReading = new PageReading({
      page: named(sheet),
      size: { width: scan.width, height: scan.height },
      dpi: scan.dpi,
      context,
      limits,
      reader,
      source: (signal) => page.source(signal),
      kept: new ReadingsFile(kept, [scan.sha256.toLowerCase(), pictureVersion(scan), version, key]),
      hand,
      told: (progress, figures) =>
        told({ sheet: sheet.id, progress, hand: this.#sayHand(sheet.id), figures }),
    })
    readings.set(key, reading)
    return reading
  }

  /** What a bare number means in the job. */
  get #context(): LengthContext {
    return lengthContext(this.#of.says())
  }

  #handOf(id: string): SheetHand {
    const known = this.#hands.get(id)
    if (known !== undefined) return known
    const { says, sheet } = this.#of
    const hand = new SheetHand({
      known: () => {
        const page = sheet(id)?.sheet.scan
        return page === undefined ? [] : knownFigures(says(), id, page)
      },
      lookedAt: () => boxesLookedAt(says(), id),
    })
    this.#hands.set(id, hand)
    return hand
  }

  /** What is told of the hand of a sheet, and is then said. */
  #sayHand(id: string): HandOfSheet {
    const { told } = this.#handOf(id)
    this.#said.set(id, told.sentence)
    return told
  }

  async #tellHand(sheet: Sheet): Promise<void> {
    const progress = await (await this.#readingOf(sheet)).progress()
    this.#of.told({ sheet: sheet.id, progress, hand: this.#sayHand(sheet.id), figures: [] })
  }

  async #tellOf(sheet: string, reading: PageReading): Promise<SheetReadings> {
    const [progress, figures] = [await reading.progress(), await reading.figures()]
    return { sheet, progress, hand: this.#sayHand(sheet), figures }
  }
}

const named = ({ scan }: Sheet): PagePart => ({ scan: scan.file, page: scan.page === 1 ? null : scan.page })
