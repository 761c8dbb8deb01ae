import { LIMITS, type Limits } from '../../../contract/limits.ts'
import type { PictureWanted } from '../../../contract/picture-addresses.ts'
import { pyramidLevels } from '../../../contract/picture-pyramid.ts'
import type { PictureProgress, SheetPictures } from '../../../contract/pictures.ts'
import type { Sheet } from '../../../core/job/model/types.ts'
import type { AnyReason } from '../../../core/words/reason.ts'
import { WorkQueue } from '../process/work-queue.ts'
import { scanFault } from '../scans/kept/scan-fault.ts'
import { resolveScan } from '../scans/kept/scan-path.ts'
import type { SheetScan } from '../scans/kept/verify-scans.ts'
import { ServiceError } from '../service-error.ts'
import { inWords, reason } from '../words/services-words.ts'
import { dropStrange } from './cache/drop-strange.ts'
import { pictureFolder } from './cache/picture-folder.ts'
import { pictureVersion } from './layout/picture-names.ts'
import { OVERVIEW_SIDE, within } from './layout/sizes.ts'
import type { PageProgress } from './making/page.ts'
import { PagePictures } from './page/page-pictures.ts'
import { type MakePyramid, pyramids } from './process/pyramids.ts'
import type { PictureFile } from './tiles/read-picture.ts'

export interface PicturesOf {
  /** The job folder. */
  job: string
  /** Whether pictures may be kept in the job's own `.cache`. */
  writable: () => boolean
  /** Makes a folder of this process's own, removed in the end. */
  temporary: () => Promise<string>
  /** The sheet of an id and how its scan was found; undefined when the job has none. */
  sheet: (id: string) => { sheet: Sheet; scan: SheetScan | undefined } | undefined
  progressed: (progress: PictureProgress) => void
  /** The built program that makes pictures; undefined when the project was not built. */
  program: string | undefined
  /** All sheets of the job: the pictures of others are removed when the first is shown. Without: none are. */
  sheets?: () => readonly Sheet[]
  /** How much is taken in. Without: as much as is usual. */
  limits?: () => Limits
  /** What opens a locked scan, by its SHA-256. */
  password?: (sha256: string) => string | undefined
}

export type { PictureFile }

/** The pictures of all sheets of a job. Sheets on the same page of the same scan share theirs. */
export class Pictures {
  readonly #of: PicturesOf
  readonly #make: MakePyramid
  /** Of the sheets that wait to be cut, the one asked for last is next, for that is what is looked at. */
  readonly #queue = new WorkQueue({ newestFirst: true })
  readonly #pages = new Map<string, { pictures: PagePictures; sheets: Set<string> }>()
  #closed = false
  #tidied: Promise<void> | undefined

  constructor(of: PicturesOf) {
    this.#of = of
    this.#make = pyramids(of.program)
  }

  /**
   * Begins the pictures of a sheet where they are not there.
   * @returns what can be shown; of a scan that can't be shown, why, as a progress that failed
   * @throws ServiceError when the job has no such sheet
   */
  async show(id: string): Promise<SheetPictures> {
    const { sheet, scan } = this.#mustHave(id)
    const { width, height } = sheet.scan
    const answer = (progress: PageProgress, exact = false): SheetPictures => ({
      sheet: id,
      width,
      height,
      version: pictureVersion(sheet.scan),
      overview: within({ width, height }, OVERVIEW_SIDE),
      levels: pyramidLevels(width, height),
      exact,
      progress: { sheet: id, ...progress },
    })
    const fault = this.#fault(sheet, scan)
    if (fault !== undefined) return answer({ state: 'failed', done: 0, sentence: inWords(fault) })
    this.#tidied ??= this.#tidy()
    const page = this.#pageOf(sheet)
    await page.begin()
    return answer(page.progress, page.exact)
  }

  /**
   * Stops making the pictures of a sheet.
   * @throws ServiceError when the job has no such sheet
   */
  stop(id: string): void {
    const { sheet } = this.#mustHave(id)
    this.#pages.get(pictureVersion(sheet.scan))?.pictures.stop()
  }

  /** How far the pictures are of every sheet that they were asked for of. */
  progress(): PictureProgress[] {
    return [...this.#pages.values()].flatMap(({ pictures, sheets }) =>
      [...sheets].map((sheet) => ({ sheet, ...pictures.progress })),
    )
  }

  /**
   * A picture; null when there is none. What is being made is waited for.
   * @param signal ends the waiting for a tile
   */
  async picture(wanted: PictureWanted, signal?: AbortSignal): Promise<PictureFile | null> {
    const found = this.#of.sheet(wanted.sheet)
    if (found === undefined || this.#fault(found.sheet, found.scan) !== undefined) return null
    const made = this.#pages.get(wanted.version)
    // What a window still asks for of the scan that the sheet had before is what it says it is.
    const isOfIt =
      wanted.version === pictureVersion(found.sheet.scan) || made?.sheets.has(wanted.sheet) === true
    if (made === undefined || !isOfIt) return null
    const page = made.pictures
    return wanted.kind === 'tile' ? page.tile(wanted, signal) : page.whole(wanted.kind)
  }

  /** Stops everything and waits until nothing runs any more. */
  async close(): Promise<void> {
    this.#closed = true
    await Promise.all([...this.#pages.values()].map(({ pictures }) => pictures.close()))
    await this.#tidied
  }

  #mustHave(id: string): { sheet: Sheet; scan: SheetScan | undefined } {
    const found = this.#of.sheet(id)
    if (found !== undefined && !this.#closed) return found
    throw new ServiceError(reason('workbench.no-such-sheet'))
  }

  async #tidy(): Promise<void> {
    const { job, sheets, writable } = this.#of
    if (sheets === undefined || !writable()) return
    // What can't be removed is in nobody's way.
    await dropStrange(job, sheets()).catch(() => undefined)
  }

  /** Why a scan can't be shown. */
  #fault(sheet: Sheet, found: SheetScan | undefined): AnyReason | undefined {
    const { limits = usual } = this.#of
    return scanFault(sheet, found, limits())
  }

  #pageOf(sheet: Sheet): PagePictures {
    const { id, scan } = sheet
    const version = pictureVersion(scan)
    const known = this.#pages.get(version)
    if (known !== undefined) {
      known.sheets.add(id)
      return known.pictures
    }
    const { job, writable, temporary, progressed, password, limits = usual } = this.#of
    const sheets = new Set([id])
    const page = { scan, levels: pyramidLevels(scan.width, scan.height) }
    const pictures = new PagePictures({
      ...page,
      sheet,
      folder: () => pictureFolder(job, page, writable(), temporary),
      file: () => resolveScan(job, scan.file, sheet),
      password: () => password?.(scan.sha256.toLowerCase()),
      limits,
      make: this.#make,
      queue: this.#queue,
      progressed: (progress) => {
        for (const one of sheets) progressed({ sheet: one, ...progress })
      },
    })
    this.#pages.set(version, { pictures, sheets })
    return pictures
  }
}

const usual = (): Limits => LIMITS
