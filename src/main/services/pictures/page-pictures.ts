import { join } from 'node:path'
import type { PictureWanted } from '../../../contract/pictures.ts'
import type { TilePlace } from './block.ts'
import { DrawnPage } from './drawn-page.ts'
import { Gate } from './gate.ts'
import { makePage } from './make-page.ts'
import type { Page, PageProgress } from './page.ts'
import type { Whole } from './page-making.ts'
import { cutting, failed, isOver, OVERVIEW_BEGUN, READY, stopped } from './page-progress.ts'
import { PageTiles } from './page-tiles.ts'
import { wholeFile } from './picture-names.ts'
import { type Picture, readPicture } from './read-picture.ts'
import type { TileKind } from './tile-kind.ts'

/** Milliseconds between two tellings of how far it is. */
const TOLD_EVERY = 200

/** The pictures of one page of a scan: begins, tells how far they are, stops, and hands them out. */
export class PagePictures {
  readonly #page: Page
  readonly #tiles: PageTiles
  readonly #drawn: DrawnPage
  #progress = OVERVIEW_BEGUN
  #toldAt = Number.NEGATIVE_INFINITY
  /** Holds the picture of the whole. */
  #folder: string | undefined
  #kind: TileKind | undefined
  #whole: Whole | undefined
  #making: Promise<void> | undefined
  /** Stops what is being made now. */
  #run = new AbortController()
  /** The picture of the whole is there or won't come; and those made of it. */
  #overviewed = Promise.resolve()
  #begun = Promise.resolve()

  constructor(page: Page) {
    this.#page = page
    this.#tiles = new PageTiles(page.levels, () => performance.now())
    this.#drawn = new DrawnPage(page)
  }

  get progress(): PageProgress {
    return this.#progress
  }

  /** Whether the tiles have the values of the scan; false as long as that is not known. */
  get exact(): boolean {
    return this.#kind?.exact ?? false
  }

  /** A picture of the whole sheet, waited for while it is made; null when there is none. */
  async whole(kind: Exclude<PictureWanted['kind'], 'tile'>): Promise<Picture | null> {
    await (kind === 'overview' ? this.#overviewed : this.#begun)
    if (this.#folder === undefined) return null
    const { file, type } = wholeFile(kind)
    const bytes = await readPicture(join(this.#folder, file))
    return bytes === null ? null : { bytes, type }
  }

  /** A tile, waited for while it is made; null when there is none. @param signal ends the waiting */
  async tile(place: TilePlace, signal?: AbortSignal): Promise<Picture | null> {
    await this.#begun
    return this.#tiles.tile(place, signal)
  }

  /**
   * Begins, or goes on after a stop or a failure.
   * @returns when it is known what is there already, and how the tiles are kept, unless the page must be drawn first
   */
  async begin(): Promise<void> {
    if (this.#making !== undefined) {
      // What was stopped is coming to its end; then it is begun again.
      if (this.#isOver()) this.#set(this.#folder === undefined ? OVERVIEW_BEGUN : cutting(this.#page, 0))
      return
    }
    await new Promise<void>((resolve) => {
      this.#run = new AbortController()
      this.#making = this.#make(this.#run.signal, resolve).finally(() => {
        this.#making = undefined
        resolve()
        if (!this.#isOver()) void this.begin()
      })
    })
  }

  /** What is there stays. */
  stop(): void {
    if (this.#making === undefined || this.#isOver()) return
    this.#run.abort()
    this.#set(stopped(this.#progress.done))
  }

  /** Stops, and waits until nothing runs any more. */
  async close(): Promise<void> {
    this.stop()
    await this.#making
    await this.#drawn.remove()
  }

  async #make(signal: AbortSignal, known: () => void): Promise<void> {
    const [overviewed, begun] = [new Gate(), new Gate()]
    this.#overviewed = overviewed.opened
    this.#begun = begun.opened
    const endTiles = (): void => void this.#tiles.end()
    signal.addEventListener('abort', endTiles)
    const tell = (progress: PageProgress): void => {
      if (!signal.aborted) this.#set(progress)
    }
    try {
      const found = await this.#page.folder()
      const folder = found.path
      if (found.manifest === null) {
        tell(OVERVIEW_BEGUN)
        found.manifest = await makePage({
          page: this.#page,
          folder,
          whole: this.#whole,
          tiles: this.#tiles,
          drawn: this.#drawn,
          signal,
          tell,
          drawing: known,
          looked: (kind) => {
            this.#kind = kind
            known()
          },
          overviewed: () => {
            this.#folder = folder
            overviewed.open()
          },
          begun: (whole) => {
            this.#whole = whole
            begun.open()
          },
        })
      }
      if (found.manifest === null) return
      const { type, exact } = found.manifest
      this.#kind = { type, exact }
      this.#folder = folder
      this.#tiles.keep(folder, found.manifest)
      await this.#drawn.remove()
      tell(READY)
    } catch (error) {
      if (!signal.aborted) this.#set(failed(error, this.#progress.done))
    } finally {
      signal.removeEventListener('abort', endTiles)
      await this.#tiles.end()
      overviewed.open()
      begun.open()
    }
  }

  #isOver(): boolean {
    return isOver(this.#progress)
  }

  #set(progress: PageProgress): void {
    const sameState = progress.state === this.#progress.state
    this.#progress = progress
    const at = performance.now()
    if (sameState && at - this.#toldAt < TOLD_EVERY) return
    this.#toldAt = at
    this.#page.progressed(progress)
  }
}
