import { join } from 'node:path'
import type { PictureWanted } from '../../../../contract/picture-addresses.ts'
import type { TilePlace } from '../layout/block.ts'
import { wholeFile } from '../layout/picture-names.ts'
import { DrawnPage } from '../making/drawn-page.ts'
import { makePage } from '../making/make-page.ts'
import type { MakingEvent } from '../making/making.ts'
import type { Page, PageProgress } from '../making/page.ts'
import { PageTiles } from '../tiles/page-tiles.ts'
import { type PictureFile, readPicture } from '../tiles/read-picture.ts'
import {
  after,
  hasOverview,
  hasTiles,
  isBroken,
  isKnown,
  isTold,
  type PageEvent,
  type PageState,
  progressOf,
  UNASKED,
} from './page-state.ts'

/** Milliseconds between two tellings of how far it is. */
const TOLD_EVERY = 200

/** What is being made now. ending: it was stopped or failed, and is coming to its end */
type Run = { is: 'none' } | { is: 'on' | 'ending'; stop: AbortController; ended: Promise<void> }

/** The pictures of one page of a scan: begins, tells how far they are, stops, and hands them out. */
export class PagePictures {
  readonly #page: Page
  readonly #tiles: PageTiles
  readonly #drawn: DrawnPage
  /** Called when the state has changed. */
  readonly #waiting = new Set<() => void>()
  #state = UNASKED
  #run: Run = { is: 'none' }
  #toldAt = Number.NEGATIVE_INFINITY

  constructor(page: Page) {
    this.#page = page
    this.#tiles = new PageTiles(page, () => performance.now())
    this.#drawn = new DrawnPage(page)
  }

  get progress(): PageProgress {
    return progressOf(this.#state, this.#page)
  }

  /** Whether the tiles have the values of the scan; false as long as that is not known. */
  get exact(): boolean {
    return this.#state.kind?.exact ?? false
  }

  /** A picture of the whole sheet, waited for while it is made; null when there is none. */
  async whole(kind: Exclude<PictureWanted['kind'], 'tile'>): Promise<PictureFile | null> {
    await this.#until(kind === 'overview' ? hasOverview : hasTiles)
    const { folder } = this.#state
    if (folder === undefined) return null
    const { file, type } = wholeFile(kind)
    const bytes = await readPicture(join(folder, file))
    return bytes === null ? null : { bytes, type }
  }

  /** A tile, waited for while it is made; null when there is none. @param signal ends the waiting */
  async tile(place: TilePlace, signal?: AbortSignal): Promise<PictureFile | null> {
    await this.#until(hasTiles)
    return this.#tiles.tile(place, signal)
  }

  /**
   * Begins, or goes on after a stop or a failure.
   * @returns when it is known what is there already, and how the tiles are kept, unless the page must be drawn first
   */
  async begin(): Promise<void> {
    if (this.#run.is === 'none') this.#start()
    // It comes to its end first; whoever asks from now on waits for what is made after that.
    else if (this.#run.is === 'ending' && isBroken(this.#state)) this.#take({ is: 'asked again' })
    await this.#until(isKnown)
  }

  /** What is there stays. */
  stop(): void {
    if (this.#run.is === 'none' || this.#state.stage.at === 'ready' || isBroken(this.#state)) return
    this.#run.is = 'ending'
    this.#run.stop.abort()
    this.#take({ is: 'stopped' })
  }

  /** Stops, and waits until nothing runs any more. */
  async close(): Promise<void> {
    this.stop()
    if (this.#run.is !== 'none') await this.#run.ended
    await this.#drawn.remove()
  }

  #start(): void {
    this.#take({ is: 'asked' })
    const stop = new AbortController()
    const ended = this.#make(stop.signal).finally(() => {
      const wasEnding = this.#run.is === 'ending'
      this.#run = { is: 'none' }
      if (wasEnding && this.#state.stage.at === 'asked') this.#start()
    })
    this.#run = { is: 'on', stop, ended }
  }

  async #make(signal: AbortSignal): Promise<void> {
    const endTiles = (): void => void this.#tiles.end()
    signal.addEventListener('abort', endTiles)
    const tell = (event: MakingEvent): void => {
      this.#tiles.take(event)
      if (!signal.aborted) this.#take(event)
    }
    try {
      const { path: folder, manifest } = await this.#page.folder()
      if (manifest === null) tell({ is: 'begun' })
      const { whole } = this.#state
      const making = { page: this.#page, folder, drawn: this.#drawn, whole, signal, tell }
      const made = manifest ?? (await makePage(making))
      if (made === null) return
      await this.#drawn.remove()
      tell({ is: 'ready', folder, manifest: made })
    } catch (error) {
      if (signal.aborted) return
      if (this.#run.is === 'on') this.#run.is = 'ending'
      this.#take({ is: 'failed', error })
    } finally {
      signal.removeEventListener('abort', endTiles)
      await this.#tiles.end()
    }
  }

  /** Resolves when the state is such a one. */
  #until(is: (state: PageState) => boolean): Promise<void> {
    return new Promise((resolve) => {
      const look = (): void => {
        if (!is(this.#state)) return
        this.#waiting.delete(look)
        resolve()
      }
      this.#waiting.add(look)
      look()
    })
  }

  #take(event: PageEvent): void {
    const before = this.progress
    this.#state = after(this.#state, event, this.#page)
    for (const look of [...this.#waiting]) look()
    if (!isTold(this.#state, event)) return
    const progress = this.progress
    const at = performance.now()
    if (progress.state === before.state && at - this.#toldAt < TOLD_EVERY) return
    this.#toldAt = at
    this.#page.progressed(progress)
  }
}
