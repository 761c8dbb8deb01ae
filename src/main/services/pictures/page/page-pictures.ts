import { join } from 'node:path'
import type { PictureWanted } from '../../../../contract/picture-addresses.ts'
import type { TilePlace } from '../layout/block.ts'
import { wholeFile } from '../layout/picture-names.ts'
import type { TileKind } from '../layout/tile-kind.ts'
import { PageTiles } from '../tiles/page-tiles.ts'
import { type PictureFile, readPicture } from '../tiles/read-picture.ts'
import { DrawnPage } from './drawn-page.ts'
import { Gates } from './gate.ts'
import { makePage } from './make-page.ts'
import type { Page, PageProgress } from './page.ts'
import type { Whole } from './page-making.ts'
import { cutting, failed, OVERVIEW_BEGUN, READY, stopped } from './page-progress.ts'

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
  /** Whether what is being made was stopped or failed, and is coming to its end. */
  #ending = false
  /** Of what is made now or was last; of what is made next, once that is wanted. */
  #gates = new Gates()
  #next: Gates | undefined

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
  async whole(kind: Exclude<PictureWanted['kind'], 'tile'>): Promise<PictureFile | null> {
    const { overviewed, begun } = this.#gates
    await (kind === 'overview' ? overviewed : begun).opened
    if (this.#folder === undefined) return null
    const { file, type } = wholeFile(kind)
    const bytes = await readPicture(join(this.#folder, file))
    return bytes === null ? null : { bytes, type }
  }

  /** A tile, waited for while it is made; null when there is none. @param signal ends the waiting */
  async tile(place: TilePlace, signal?: AbortSignal): Promise<PictureFile | null> {
    await this.#gates.begun.opened
    return this.#tiles.tile(place, signal)
  }

  /**
   * Begins, or goes on after a stop or a failure.
   * @returns when it is known what is there already, and how the tiles are kept, unless the page must be drawn first
   */
  async begin(): Promise<void> {
    if (this.#making === undefined) this.#start(new Gates())
    else if (this.#ending && this.#isBroken()) {
      // It comes to its end first; whoever asks from now on waits for what is made after that.
      this.#next ??= new Gates()
      this.#gates = this.#next
      this.#set(this.#folder === undefined ? OVERVIEW_BEGUN : cutting(this.#page, 0))
    }
    await this.#gates.known.opened
  }

  /** What is there stays. */
  stop(): void {
    if (this.#making === undefined || this.#progress.state === 'ready') return
    if (this.#ending && this.#isBroken()) return
    this.#ending = true
    this.#run.abort()
    this.#set(stopped(this.#progress.done))
  }

  /** Stops, and waits until nothing runs any more. */
  async close(): Promise<void> {
    this.stop()
    await this.#making
    await this.#drawn.remove()
  }

  #start(gates: Gates): void {
    this.#gates = gates
    this.#run = new AbortController()
    this.#ending = false
    this.#making = this.#make(this.#run.signal, gates).finally(() => {
      this.#making = undefined
      const next = this.#next
      this.#next = undefined
      if (next === undefined) return
      // It may have been stopped again meanwhile.
      if (this.#isBroken()) next.openAll()
      else this.#start(next)
    })
  }

  async #make(signal: AbortSignal, gates: Gates): Promise<void> {
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
          drawing: () => gates.known.open(),
          looked: (kind) => {
            this.#kind = kind
            gates.known.open()
          },
          overviewed: () => {
            this.#folder = folder
            gates.overviewed.open()
          },
          begun: (whole) => {
            this.#whole = whole
            gates.begun.open()
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
      if (signal.aborted) return
      this.#ending = true
      this.#set(failed(error, this.#progress.done))
    } finally {
      signal.removeEventListener('abort', endTiles)
      await this.#tiles.end()
      gates.openAll()
    }
  }

  /** Whether it was stopped, or failed. */
  #isBroken(): boolean {
    return this.#progress.state === 'stopped' || this.#progress.state === 'failed'
  }

  #set(to: PageProgress): void {
    const sameState = to.state === this.#progress.state
    const progress = this.#kind === undefined ? to : { ...to, exact: this.#kind.exact }
    this.#progress = progress
    const at = performance.now()
    if (sameState && at - this.#toldAt < TOLD_EVERY) return
    this.#toldAt = at
    this.#page.progressed(progress)
  }
}
