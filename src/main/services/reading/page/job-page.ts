import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import type { Limits } from '../../../../contract/limits.ts'
import { pyramidLevels } from '../../../../contract/picture-pyramid.ts'
import type { Sheet } from '../../../../core/job/model/types.ts'
import { pictureFolder } from '../../pictures/cache/picture-folder.ts'
import { pictureFolderName, TILES } from '../../pictures/layout/picture-names.ts'
import { DrawnPage } from '../../pictures/making/drawn-page.ts'
import type { PageInFile } from '../../pictures/pyramid/open-page.ts'
import { WorkQueue } from '../../process/work-queue.ts'
import { resolveScan } from '../../scans/kept/scan-path.ts'
import type { PageSource } from './page-source.ts'

export interface JobPageOf {
  /** The job folder. */
  job: string
  sheet: Sheet
  /** Makes a folder of this process's own, removed in the end. */
  temporary: () => Promise<string>
  limits: () => Limits
  password: () => string | undefined
}

/** Where the pixels of a sheet's page come from: its tiles where they are made, else the scan itself. */
export class JobPage {
  readonly #of: JobPageOf
  readonly #drawn: DrawnPage
  /** It is drawn once, whoever asks meanwhile. */
  readonly #drawing = new WorkQueue()

  constructor(of: JobPageOf) {
    const { job, sheet, limits, password } = of
    this.#of = of
    const file = (): Promise<string> => resolveScan(job, sheet.scan.file, sheet)
    this.#drawn = new DrawnPage({ scan: sheet.scan, file, password, limits })
  }

  /** @throws ServiceError when the scan can't be read; ScanLocked when it wants a password */
  async source(signal: AbortSignal): Promise<PageSource> {
    const { job, sheet, temporary } = this.#of
    const { scan } = sheet
    const size = { width: scan.width, height: scan.height }
    const page = { scan, levels: pyramidLevels(scan.width, scan.height) }
    const { path, manifest } = await pictureFolder(job, page, false, temporary)
    if (manifest !== null)
      return { size, from: { is: 'tiles', folder: join(path, TILES), type: manifest.type } }
    const beside = join(await temporary(), 'figures', pictureFolderName(scan))
    await mkdir(beside, { recursive: true })
    const draw = (): Promise<PageInFile> => this.#drawn.file(beside, () => undefined, signal)
    return { size, from: { is: 'file', file: await this.#drawing.do(draw, signal) } }
  }

  /** What was drawn of it is needed no more. */
  close(): Promise<void> {
    return this.#drawn.remove()
  }
}
