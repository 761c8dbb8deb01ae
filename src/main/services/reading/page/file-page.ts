import { LRUCache } from 'lru-cache'
import type { GreyWindow } from '../../../../core/imaging/index.ts'
import type { PageArea } from '../../pictures/layout/block.ts'
import { lookAtPage, openPage, type PageInFile } from '../../pictures/pyramid/open-page.ts'
import type { PixelSize } from '../../scans/page/pixel-size.ts'
import type { GreyPage } from './grey-page.ts'
import { rawGreys } from './raw-greys.ts'

/** Pixels of a strip across the page: a file is read from its beginning down to there, so what lies beside is kept. */
const STRIP = 6_000_000
/** What lies across the end of a strip is part of it still, by so much of its height. */
const BEYOND = 0.25
/** Bytes of strips that are kept. */
const KEPT = 40_000_000

/** A page in a file that is read from above to below. */
export class FilePage implements GreyPage {
  readonly #file: PageInFile
  readonly #size: PixelSize
  readonly #strips = new LRUCache<string, GreyWindow>({
    maxSize: KEPT,
    sizeCalculation: ({ data }) => data.byteLength,
  })
  #kind: ReturnType<typeof lookAtPage> | undefined

  constructor(file: PageInFile, size: PixelSize) {
    this.#file = file
    this.#size = size
  }

  /** @throws Error when the file can't be read */
  async greys(area: PageArea, level: number): Promise<GreyWindow> {
    const strip = await this.#stripWith(area, level)
    const { left, top, width, height } = area
    const data = new Uint8Array(width * height)
    for (let y = 0; y < height; y++) {
      const from = (top + y - strip.top) * strip.width + left
      data.set(strip.data.subarray(from, from + width), y * width)
    }
    return { ...area, data }
  }

  /** A strip that holds all of an area. */
  async #stripWith({ top, height }: PageArea, level: number): Promise<GreyWindow> {
    for (const [key, strip] of this.#strips.entries()) {
      const holds = strip.top <= top && strip.top + strip.height >= top + height
      if (holds && key.startsWith(`${level}:`)) return this.#strips.get(key) ?? strip
    }
    const page = { width: atLevel(this.#size.width, level), height: atLevel(this.#size.height, level) }
    // Strips begin at the same rows whatever is asked for, and reach beyond the next one's beginning.
    const step = Math.max(1, Math.floor(STRIP / page.width))
    const from = Math.floor(top / step) * step
    const rows = Math.min(page.height - from, Math.max(step + Math.ceil(step * BEYOND), top - from + height))
    const strip = await this.#read({ left: 0, top: from, width: page.width, height: rows }, level)
    this.#strips.set(`${level}:${from}`, strip)
    return strip
  }

  async #read(strip: PageArea, level: number): Promise<GreyWindow> {
    this.#kind ??= lookAtPage(this.#file)
    const { kind } = await this.#kind
    const page = await openPage(this.#file, kind)
    if (level === 0) return { ...strip, ...(await rawGreys(page.extract(strip))) }
    const side = 2 ** level
    const [top, bottom] = [strip.top * side, Math.min(this.#size.height, (strip.top + strip.height) * side)]
    const part = page.extract({ left: 0, top, width: this.#size.width, height: bottom - top })
    const { width, height } = strip
    return { ...strip, ...(await rawGreys(part.resize({ width, height, fit: 'fill', kernel: 'linear' }))) }
  }
}

/** Pixels of a side that was halved so many times. */
const atLevel = (pixels: number, level: number): number => Math.max(1, Math.ceil(pixels / 2 ** level))
