import { mkdir, rm } from 'node:fs/promises'
import { join } from 'node:path'
import type { PyramidLevel } from '../../../../contract/pictures.ts'
import { halfMade } from '../cache/half-made.ts'
import { areaOf, type Block, blockAbout, liesIn, type PageArea, type TilePlace } from '../layout/block.ts'
import { tileFile } from '../layout/picture-names.ts'
import type { TileKind } from '../layout/tile-kind.ts'
import type { Page } from '../making/page.ts'
import type { PageInFile } from '../pyramid/open-page.ts'
import { isSooner, type Pace, readingPace } from './tile-priority.ts'

export interface EarlyOf {
  page: Pick<Page, 'levels' | 'make' | 'limits'>
  file: PageInFile
  kind: TileKind
  /** Blocks are made in folders of their own in it. */
  folder: string
  /** What reading the page takes, as far as is known, ms. */
  read: number
  now: () => number
}

/** Tiles of a page that are made before their turn, because they are looked at. One block is made at a time. */
export class EarlyTiles {
  readonly #of: EarlyOf
  readonly #files = new Map<string, string>()
  readonly #folders: string[] = []
  #read: number
  #running: Promise<void> | undefined
  #making: { block: Block; stop: AbortController } | undefined
  #ended = false

  constructor(of: EarlyOf) {
    this.#of = of
    this.#read = of.read
  }

  /** Where a tile is; undefined when it was not made. */
  file(place: TilePlace): string | undefined {
    return this.#files.get(tileFile(place, this.#of.kind.type))
  }

  /**
   * Makes the first of these that is sooner there so than in its turn. What is being made though none of these lies in
   * it is given up: who wanted it looks elsewhere by now.
   */
  consider(wanted: readonly TilePlace[], cutting: Omit<Pace, 'read'>): void {
    const { levels } = this.#of.page
    const [page] = levels
    if (this.#ended || page === undefined) return
    const making = this.#making
    if (making !== undefined && !wanted.some((place) => liesIn(place, making.block))) making.stop.abort()
    if (this.#running !== undefined) return
    for (const place of wanted) {
      const level = levels[place.level]
      if (level === undefined || this.file(place) !== undefined) continue
      const block = blockAbout(place, level)
      const area = areaOf(block, page)
      if (!isSooner(area, page, { ...cutting, read: this.#read })) continue
      this.#running = this.#make(block, area, page).finally(() => {
        this.#running = undefined
      })
      return
    }
  }

  /** Ends what is being made, and waits until it has ended; what is there goes. */
  async end(): Promise<void> {
    this.#ended = true
    this.#making?.stop.abort()
    await this.#running
    this.#files.clear()
    for (const folder of this.#folders) await rm(folder, { recursive: true, force: true })
  }

  async #make(block: Block, area: PageArea, { width, height }: PyramidLevel): Promise<void> {
    const folder = join(this.#of.folder, halfMade('early'))
    const size = { width, height }
    const began = this.#of.now()
    try {
      this.#folders.push(folder)
      await mkdir(folder)
      if (this.#ended) return
      const stop = new AbortController()
      this.#making = { block, stop }
      const files = await this.#of.page.make(
        { make: 'block', wanted: { file: this.#of.file, kind: this.#of.kind, size, folder, block } },
        { memory: this.#of.page.limits().memory, signal: stop.signal },
      )
      if (files === null) return await rm(folder, { recursive: true, force: true })
      for (const file of files) this.#files.set(file, join(folder, file))
      this.#read = readingPace(area, size, this.#of.now() - began)
    } catch {
      // They come in their turn, or the cutting says why not.
      this.#ended = true
    } finally {
      this.#making = undefined
    }
  }
}
