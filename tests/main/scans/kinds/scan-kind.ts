import type { ScanLook } from '../../../../src/contract/scan-look.ts'
import type { Picture } from './picture.ts'

/** What a page of a file is, by who made it. */
export interface PageTruth {
  width: number
  height: number
  /** Pixels per inch; absent where the file doesn't say. */
  dpi?: number
  orientation?: number
  made: 'scanned' | 'drawn'
  /** The samples of its sheet; absent of a drawn page. */
  picture?: Picture
  /** How far any sample may be off: 0 unless two decoders round differently. */
  within?: number
  /** Where the middle of drawn lines lies: across (x) or down (y) the sheet, pixels of it, along a row or column. */
  lines?: readonly { axis: 'x' | 'y'; at: number; along: number }[]
}

export interface MadeScan {
  bytes: Buffer
  pages: readonly PageTruth[]
}

/** A kind of file that an archive may hold, and how one is made. */
export interface ScanKind {
  name: string
  /** Name of the file. */
  file: string
  format: ScanLook['format']
  password?: string
  make: () => MadeScan | Promise<MadeScan>
}
