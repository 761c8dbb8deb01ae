/** What a scan file that was handed over holds. */
export interface ScanLook {
  upload: string
  /** What the person's system calls it. */
  name: string
  format: 'png' | 'jpeg' | 'webp' | 'tiff' | 'pdf'
  /** Whether it waits for a password; then nothing is known of its pages. */
  locked: boolean
  /** Pages in the file. */
  pages: number
  /**
   * Those of them that are no sheets of their own, because the file says that they are reduced copies of another page, or
   * masks; absent where there are none. They are not among `looked`.
   */
  leftOut?: number[]
  /** What is known of the pages that were looked at. */
  looked: PageLook[]
}

/** What a page of a scan file holds. */
export interface PageLook {
  page: number
  /** scanned: it has the pixels of a picture. drawn: it has lines and lettering, and gets as many pixels as one likes. */
  made: 'scanned' | 'drawn'
  /** Pixels of the sheet that it would make; of a drawn page at `drawnAt`. */
  width: number
  height: number
  /** Pixels per inch, where the file says so. */
  dpi?: number
  /** Of a drawn page: dots per inch that it would be drawn at unless another number is chosen. */
  drawnAt?: number
  /** Of a drawn page: size of the paper in inches. */
  paper?: { width: number; height: number }
  /** Exif orientation, 2 to 8. */
  orientation?: number
  /** Why no sheet can be made of it, a sentence; absent where one can. */
  fault?: string
}
