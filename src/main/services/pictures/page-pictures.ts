import { randomBytes } from 'node:crypto'
import { mkdir, rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import type { PictureProgress, PyramidLevel } from '../../../contract/pictures.ts'
import { systemReason } from '../files/system-reason.ts'
import { ServiceError } from '../service-error.ts'
import { makeFromOverview, makeOverview } from './make-whole.ts'
import { hasAll, hasFromOverview, hasOverview } from './picture-folder.ts'
import { TILES, tilesOf } from './picture-names.ts'
import { type RunningPyramid, runPyramid } from './run-pyramid.ts'
import type { Size } from './sizes.ts'
import { tilesComplete } from './tiles-complete.ts'
import type { Turns } from './turns.ts'

/** How far the pictures of a page are. */
export type PageProgress = Omit<PictureProgress, 'sheet'>

export interface Page {
  /** Finds the folder for the pictures. */
  folder: () => Promise<string>
  /** Finds the scan and sees that it is what the job says. @throws ServiceError with a sentence when not */
  scan: () => Promise<string>
  page: number
  size: Size
  levels: readonly PyramidLevel[]
  /** The built program that cuts tiles. */
  program: string | undefined
  turns: Turns
  progressed: (progress: PageProgress) => void
}

/** Milliseconds between two tellings of how far it is. */
const TOLD_EVERY = 200

const WHOLE = 'Making the picture of the whole sheet.'
const OVERVIEW_BEGUN: PageProgress = { state: 'overview', done: 0, sentence: WHOLE }
const ENDS: readonly PageProgress['state'][] = ['ready', 'stopped', 'failed']
const READY = 'All pictures of the sheet are made.'
const STOPPED = 'The making of pictures was stopped, so the sheet is shown coarsely; show it again to go on.'
const NOT_BUILT = 'the program that cuts tiles is not there: build the project with "npm run build"'

/** Makes the pictures of one page of a scan: the whole first, then what is made of it, then the tiles. */
export class PagePictures {
  readonly #page: Page
  readonly #expected: number
  #progress = OVERVIEW_BEGUN
  #toldAt = Number.NEGATIVE_INFINITY
  #folder: string | undefined
  #making: Promise<void> | undefined
  #whole: Promise<void> = Promise.resolve()
  #stopping = false
  #pyramid: RunningPyramid | undefined

  constructor(page: Page) {
    this.#page = page
    this.#expected = page.levels.reduce((sum, level) => sum + tilesOf(level), 0)
  }

  get progress(): PageProgress {
    return this.#progress
  }

  /**
   * The folder that holds the pictures; undefined while there is none of them.
   * @param patient waits for the pictures of the whole sheet while they are made
   */
  async folder(patient: boolean): Promise<string | undefined> {
    if (patient) await this.#whole
    return this.#folder
  }

  /**
   * Begins, or goes on after a stop or a failure.
   * @returns when it is known what is there already
   */
  async begin(): Promise<void> {
    const resumed = this.#stopping
    this.#stopping = false
    if (this.#making !== undefined) {
      if (resumed) this.#set(this.#folder === undefined ? OVERVIEW_BEGUN : this.#cutting(0))
      return
    }
    await new Promise<void>((resolve) => {
      this.#making = this.#make(resolve).finally(() => {
        this.#making = undefined
        resolve()
        // Asked for again after a stop that this had taken for its end.
        if (!this.#stopping && !ENDS.includes(this.#progress.state)) void this.begin()
      })
    })
  }

  /** What is there stays. */
  stop(): void {
    if (this.#making === undefined || this.#stopping) return
    this.#stopping = true
    this.#pyramid?.stop()
    this.#set({ state: 'stopped', done: this.#progress.done, sentence: STOPPED })
  }

  /** Stops, and waits until nothing runs any more. */
  async close(): Promise<void> {
    this.stop()
    await this.#making
  }

  async #make(looked: () => void): Promise<void> {
    const { levels } = this.#page
    try {
      const folder = await this.#page.folder()
      if (await hasAll(folder, levels)) {
        this.#folder = folder
        this.#set({ state: 'ready', done: 1, sentence: READY })
        return
      }
      this.#set(OVERVIEW_BEGUN)
      looked()
      const overview = this.#makeOverview(folder)
      const small = overview.then(() => makeSmall(folder))
      // Whoever asks for these pictures meanwhile waits for them; a failure is told below.
      this.#whole = small.catch(() => undefined)
      await overview
      this.#folder = folder
      if (!this.#stopping) this.#set(this.#cutting(0))
      await small
      await this.#makeTiles(folder)
    } catch (error) {
      const sentence =
        error instanceof ServiceError
          ? error.message
          : `The pictures could not be made because ${endOf(error)}.`
      this.#set({ state: 'failed', done: this.#progress.done, sentence })
    }
  }

  async #makeOverview(folder: string): Promise<void> {
    const { page, size } = this.#page
    if (!(await hasOverview(folder))) await makeOverview(await this.#page.scan(), page, size, folder)
  }

  async #makeTiles(folder: string): Promise<void> {
    const { levels, turns } = this.#page
    const tiles = join(folder, TILES)
    while (!this.#stopping) {
      if (await tilesComplete(tiles, levels)) {
        this.#set({ state: 'ready', done: 1, sentence: READY })
        return
      }
      const end = await turns.take()
      try {
        if (!this.#stopping) await this.#cut(folder, tiles)
      } finally {
        end()
      }
    }
  }

  async #cut(folder: string, tiles: string): Promise<void> {
    const { program, page, levels } = this.#page
    if (program === undefined) throw new Error(NOT_BUILT)
    const scan = await this.#page.scan()
    const temporary = join(folder, `${TILES}.${randomBytes(8).toString('hex')}.tmp`)
    await mkdir(temporary)
    try {
      this.#pyramid = runPyramid(program, { scan, page, levels, folder: temporary }, (count) => {
        if (this.#stopping) return
        this.#set(this.#cutting(count))
      })
      // A stop that came before the process was there.
      if (this.#stopping) this.#pyramid.stop()
      if ((await this.#pyramid.ended) === 'stopped') return
      if (!(await tilesComplete(temporary, levels))) throw new Error('not every tile was written')
      await rm(tiles, { recursive: true, force: true })
      await rename(temporary, tiles)
    } finally {
      this.#pyramid = undefined
      await rm(temporary, { recursive: true, force: true })
    }
  }

  #cutting(count: number): PageProgress {
    const sentence = `Cutting the sheet into tiles: ${count} of ${this.#expected}.`
    return { state: 'tiles', done: count / this.#expected, sentence }
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

async function makeSmall(folder: string): Promise<void> {
  if (!(await hasFromOverview(folder))) await makeFromOverview(folder)
}

/** Why, as the end of a sentence on one line; a decoder's own words may run over several. */
const endOf = (error: unknown): string => (systemReason(error).split('\n')[0] ?? '').trim().replace(/\.$/, '')
