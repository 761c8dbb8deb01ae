import type { PixelSize } from '../../scans/page/pixel-size.ts'
import type { PageArea } from '../layout/block.ts'

/** How quickly a page is read and cut. Milliseconds. */
export interface Pace {
  /** What reading it from top to bottom takes. */
  read: number
  /** For how long it is being cut; undefined while it waits for its turn. */
  cutFor: number | undefined
  /** Share of it that is cut, 0 to 1, from the top. */
  cut: number
}

/** Starting a process that makes pictures, ms. Measured: 150 to 250. */
const START = 250

/** Pixels that are made into tiles in a millisecond. Measured: 30,000 to 60,000 on one of two cores. */
const TILED = 30_000

/** A page takes so many times longer to cut than to read, as long as its own pace is not known. Measured: 2 to 4. */
const CUT_TO_READ = 3

/** More than this is not made out of turn: it would be nearly the page over again. Pixels. */
const MOST = 100_000_000

/** What making one part takes more because the page is being cut beside it. */
const BESIDE = 1.3

/** The pace of reading that one part made out of turn has shown, as if the page had been read whole. Milliseconds. */
export function readingPace(area: PageArea, page: PixelSize, took: number): number {
  const reading = took / BESIDE - START - (area.width * area.height) / TILED
  return Math.max(0, reading) / share(area, page)
}

/** Whether a part of a page is sooner there when it is made by itself than when it is waited for. */
export function isSooner(area: PageArea, page: PixelSize, { read, cutFor, cut }: Pace): boolean {
  const pixels = area.width * area.height
  if (pixels > MOST) return false
  const made = BESIDE * (START + read * share(area, page) + pixels / TILED)
  return made < waiting(share(area, page), { read, cutFor, cut })
}

/** A file is read from the top, and cut from the top. */
const share = ({ top, height }: PageArea, page: PixelSize): number => (top + height) / page.height

function waiting(until: number, { read, cutFor, cut }: Pace): number {
  if (cutFor === undefined) return Number.POSITIVE_INFINITY
  const whole = cut > 0 ? cutFor / cut : Math.max(cutFor, CUT_TO_READ * read)
  return Math.max(0, until - cut) * whole
}
