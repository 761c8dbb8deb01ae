import { readFile, realpath } from 'node:fs/promises'
import { join } from 'node:path'
import {
  type PictureProgress,
  type PictureWanted,
  pyramidLevels,
  type SheetPictures,
} from '../../../contract/pictures.ts'
import type { Sheet } from '../../../core/job/types.ts'
import { inspectScan } from '../scans/inspect-scan.ts'
import { resolveScan } from '../scans/scan-path.ts'
import type { SheetScan } from '../scans/verify-scans.ts'
import { ServiceError } from '../service-error.ts'
import { PagePictures, type PageProgress } from './page-pictures.ts'
import { pictureFolder } from './picture-folder.ts'
import { pictureFile, pictureFolderName, pictureVersion } from './picture-names.ts'
import { OVERVIEW_SIDE, PAGE_PIXELS, within } from './sizes.ts'
import { Turns } from './turns.ts'

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
  /** The built program that cuts tiles; undefined when the project was not built. */
  program: string | undefined
}

/** A picture's bytes and media type. */
export interface Picture {
  bytes: Uint8Array
  type: string
}

/** The pictures of all sheets of a job. Sheets on the same page of the same scan share theirs. */
export class Pictures {
  readonly #of: PicturesOf
  readonly #turns = new Turns()
  readonly #pages = new Map<string, { pictures: PagePictures; sheets: Set<string> }>()
  #closed = false

  constructor(of: PicturesOf) {
    this.#of = of
  }

  /**
   * Begins the pictures of a sheet where they are not there.
   * @returns what can be shown; of a scan that can't be shown, why, as a progress that failed
   * @throws ServiceError when the job has no such sheet
   */
  async show(id: string): Promise<SheetPictures> {
    const { sheet, scan } = this.#mustHave(id)
    const { width, height } = sheet.scan
    const answer = (progress: PageProgress): SheetPictures => ({
      sheet: id,
      width,
      height,
      version: pictureVersion(sheet.scan),
      overview: within({ width, height }, OVERVIEW_SIDE),
      levels: pyramidLevels(width, height),
      progress: { sheet: id, ...progress },
    })
    const fault = this.#fault(sheet, scan)
    if (fault !== undefined) return answer({ state: 'failed', done: 0, sentence: fault })
    const page = this.#pageOf(sheet)
    await page.begin()
    return answer(page.progress)
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

  /** A picture; null when there is none, or none yet. Those of the whole sheet are waited for while they are made. */
  async picture(wanted: PictureWanted): Promise<Picture | null> {
    const found = this.#of.sheet(wanted.sheet)
    if (found === undefined || this.#fault(found.sheet, found.scan) !== undefined) return null
    const { scan } = found.sheet
    if (wanted.version !== pictureVersion(scan)) return null
    const named = pictureFile(wanted, pyramidLevels(scan.width, scan.height))
    const folder = await this.#pages.get(wanted.version)?.pictures.folder(wanted.kind !== 'tile')
    if (named === null || folder === undefined) return null
    const path = join(folder, named.file)
    try {
      // A link put among the pictures must not lead to another file.
      if ((await realpath(path)) !== path) return null
      return { bytes: await readFile(path), type: named.type }
    } catch {
      return null
    }
  }

  /** Stops everything and waits until nothing runs any more. */
  async close(): Promise<void> {
    this.#closed = true
    await Promise.all([...this.#pages.values()].map(({ pictures }) => pictures.close()))
  }

  #mustHave(id: string): { sheet: Sheet; scan: SheetScan | undefined } {
    const found = this.#of.sheet(id)
    if (found !== undefined && !this.#closed) return found
    throw new ServiceError('The job has no such sheet any more: choose another.')
  }

  /** Why a scan can't be shown. */
  #fault({ id, scan }: Sheet, found: SheetScan | undefined): string | undefined {
    if (found === undefined)
      return `The scan ${scan.file} of sheet ${id} was not checked: open the job again.`
    if (found.state !== 'ok') return found.sentence
    if (scan.width * scan.height <= PAGE_PIXELS) return undefined
    return (
      `The scan ${scan.file} of sheet ${id} has ${scan.width} × ${scan.height} pixels, more than the ` +
      `${PAGE_PIXELS.toLocaleString('en')} that can be shown: scan it with fewer dots to the inch, or in parts.`
    )
  }

  #pageOf(sheet: Sheet): PagePictures {
    const { id, scan } = sheet
    const version = pictureVersion(scan)
    const known = this.#pages.get(version)
    if (known !== undefined) {
      known.sheets.add(id)
      return known.pictures
    }
    const { job, writable, temporary, progressed, program } = this.#of
    const levels = pyramidLevels(scan.width, scan.height)
    const sheets = new Set([id])
    const pictures = new PagePictures({
      folder: () => pictureFolder(job, pictureFolderName(scan), writable(), temporary, levels),
      scan: () => suitingScan(job, sheet),
      page: scan.page,
      size: scan,
      levels,
      program,
      turns: this.#turns,
      progressed: (progress) => {
        for (const one of sheets) progressed({ sheet: one, ...progress })
      },
    })
    this.#pages.set(version, { pictures, sheets })
    return pictures
  }
}

/** Where a sheet's scan is, seen to have the pixels that the job says. */
async function suitingScan(job: string, { id, scan }: Sheet): Promise<string> {
  const path = await resolveScan(job, scan.file, `sheet ${id}`)
  const { width, height } = await inspectScan(path, scan.file, scan.page)
  if (width === scan.width && height === scan.height) return path
  throw new ServiceError(
    `The scan ${scan.file} of sheet ${id} has ${width} × ${height} pixels, and the job says ` +
      `${scan.width} × ${scan.height}, so no mark would lie where it was picked: bring the scan in as a new sheet.`,
  )
}
