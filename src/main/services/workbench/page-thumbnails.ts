import type { PageThumbnailWanted } from '../../../contract/picture-addresses.ts'
import type { Limits } from '../limits/kept-limits.ts'
import type { PictureFile } from '../pictures/pictures.ts'
import { pageThumbnail } from '../scans/reader/read-scan.ts'
import type { Uploads } from './uploads.ts'

/** A small picture that is made, or being made. */
interface Made {
  picture: Promise<PictureFile | null>
  /** How many wait for it. */
  asking: number
  /** Nobody waits for it any more: it is not made unless it has been begun. */
  giveUp: AbortController
  isThere: boolean
}

/** Small pictures of the pages of scans that were handed over; each is made once. */
export class PageThumbnails {
  readonly #uploads: Uploads
  readonly #limits: () => Limits
  readonly #made = new Map<string, Map<number, Made>>()

  constructor(uploads: Uploads, limits: () => Limits) {
    this.#uploads = uploads
    this.#limits = limits
  }

  /** The small picture of a page; null when there is none. @param dropped whoever asked wants it no more */
  async picture(wanted: PageThumbnailWanted, dropped?: AbortSignal): Promise<PictureFile | null> {
    if (!this.#uploads.has(wanted.upload) || dropped?.aborted === true) return null
    const made = this.#find(wanted)
    made.asking++
    const leave = (): void => {
      made.asking--
      if (made.asking === 0) made.giveUp.abort()
    }
    dropped?.addEventListener('abort', leave, { once: true })
    const picture = await made.picture
    dropped?.removeEventListener('abort', leave)
    return picture
  }

  /** Of a scan that is not here any more. */
  drop(upload: string): void {
    this.#made.delete(upload)
  }

  #find({ upload, page }: PageThumbnailWanted): Made {
    const pages = this.#made.get(upload) ?? new Map<number, Made>()
    this.#made.set(upload, pages)
    const known = pages.get(page)
    if (known !== undefined && (known.isThere || !known.giveUp.signal.aborted)) return known
    const giveUp = new AbortController()
    const picture = this.#make({ upload, page }, giveUp.signal)
    const made: Made = { picture, asking: 0, giveUp, isThere: false }
    pages.set(page, made)
    void picture.then((found) => {
      // It may come the next time: the scan may have been locked, or nobody waited for it.
      made.isThere = found !== null
      if (found === null && pages.get(page) === made) pages.delete(page)
    })
    return made
  }

  async #make({ upload, page }: PageThumbnailWanted, signal: AbortSignal): Promise<PictureFile | null> {
    try {
      const scan = this.#uploads.find(upload)
      const how = { limits: this.#limits(), password: scan.password, signal }
      return { bytes: await pageThumbnail(scan, page, how), type: 'image/jpeg' }
    } catch {
      return null
    }
  }
}
