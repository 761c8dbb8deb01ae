/** A page that is to become a sheet. */
export interface WantedPage {
  /** From 1; without: the first that is a sheet of its own. */
  page?: number | undefined
  /** Dots per inch for a page that is drawn and not scanned. */
  drawnAt?: number | undefined
  /** What a person says the resolution is. */
  dpi?: number | undefined
}

/** A scan that is to be taken in: where it lies, and what messages call it. */
export interface GivenScan {
  path: string
  called: string
  /** The pages that become sheets; without: the first that is a sheet of its own. */
  pages?: readonly WantedPage[] | undefined
  password?: string | undefined
}
