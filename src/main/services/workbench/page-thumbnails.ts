import type { PageThumbnailWanted } from '../../../contract/pictures.ts'
import type { Limits } from '../limits/kept-limits.ts'
import type { Picture } from '../pictures/pictures.ts'
import { pageThumbnail } from '../scans/reader/read-scan.ts'
import type { Uploads } from './uploads.ts'

/** Small pictures of the pages of scans that were handed over; each is made once. */
export class PageThumbnails {
  readonly #uploads: Uploads
  readonly #limits: () => Limits
  readonly #made = new Map<string, Map<number, Promise<Picture | null>>>()

  constructor(uploads: Uploads, limits: () => Limits) {
    this.#uploads = uploads
    this.#limits = limits
  }

  /** The small picture of a page; null when there is none. */
  async picture({ upload, page }: PageThumbnailWanted): Promise<Picture | null> {
    if (!this.#uploads.has(upload)) return null
    const made = this.#made.get(upload) ?? new Map<number, Promise<Picture | null>>()
    this.#made.set(upload, made)
    const known = made.get(page)
    if (known !== undefined) return known
    const making = this.#make({ upload, page })
    made.set(page, making)
    const picture = await making
    // It may come the next time: the scan may have been locked.
    if (picture === null) made.delete(page)
    return picture
  }

  /** Of a scan that is not here any more. */
  drop(upload: string): void {
    this.#made.delete(upload)
  }

  async #make({ upload, page }: PageThumbnailWanted): Promise<Picture | null> {
    try {
      const scan = this.#uploads.find(upload)
      const bytes = await pageThumbnail(scan, page, { limits: this.#limits(), password: scan.password })
      return { bytes, type: 'image/jpeg' }
    } catch {
      return null
    }
  }
}
