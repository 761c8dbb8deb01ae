import { mkdir, rm } from 'node:fs/promises'
import { join } from 'node:path'
import type { Limits } from '../../../../contract/limits.ts'
import type { Sheet } from '../../../../core/job/model/types.ts'
import { exists } from '../../files/exists.ts'
import { pageFile } from '../../scans/kept/page-file.ts'
import { reason, type ServiceReason } from '../../words/services-words.ts'
import { halfMade } from '../cache/half-made.ts'
import type { PageInFile } from '../pyramid/open-page.ts'

export interface DrawnPageOf {
  scan: Sheet['scan']
  /** Finds the scan. @throws ServiceError with a sentence when it is not there */
  file: () => Promise<string>
  password: () => string | undefined
  limits: () => Limits
}

/** Milliseconds after which it is told that a page is being drawn. */
const TOLD_AFTER = 300

/** A page as a file that the library can open: the scan itself, or one that is drawn and kept as long as it is needed. */
export class DrawnPage {
  readonly #of: DrawnPageOf
  #made: { file: PageInFile; folder: string } | undefined

  constructor(of: DrawnPageOf) {
    this.#of = of
  }

  /**
   * @param beside the folder of the pictures
   * @param tell what is being done, when it takes a while
   */
  async file(beside: string, tell: (doing: ServiceReason) => void, signal: AbortSignal): Promise<PageInFile> {
    const { scan, password, limits } = this.#of
    const path = await this.#of.file()
    if (this.#made !== undefined && (await exists(this.#made.file.path))) return this.#made.file
    await this.remove()
    const folder = join(beside, halfMade('page'))
    await mkdir(folder)
    const timer = setTimeout(() => tell(drawing(scan)), TOLD_AFTER)
    try {
      const word = password()
      const known = word === undefined ? {} : { password: word }
      const file = await pageFile(path, scan, { folder, ...known, limits: limits(), signal })
      if (file.path === path) await rm(folder, { recursive: true, force: true })
      else this.#made = { file, folder }
      return file
    } catch (error) {
      await rm(folder, { recursive: true, force: true })
      throw error
    } finally {
      clearTimeout(timer)
    }
  }

  /** It is needed no more. */
  async remove(): Promise<void> {
    const folder = this.#made?.folder
    this.#made = undefined
    if (folder !== undefined) await rm(folder, { recursive: true, force: true })
  }
}

const drawing = ({ page, drawnAt }: Sheet['scan']): ServiceReason =>
  drawnAt === undefined
    ? reason('pictures.reading-the-page', { page })
    : reason('pictures.drawing-the-page', { page, dpi: drawnAt })
