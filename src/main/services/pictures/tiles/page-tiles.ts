import { join } from 'node:path'
import type { Manifest } from '../cache/manifest.ts'
import type { TilePlace } from '../layout/block.ts'
import { cutFile, hasTile, TILES, tileFile, tilesOf } from '../layout/picture-names.ts'
import type { TileKind } from '../layout/tile-kind.ts'
import type { MakingEvent } from '../making/making.ts'
import type { Page } from '../making/page.ts'
import { EarlyTiles } from './early-tiles.ts'
import { type PictureFile, readTile } from './read-picture.ts'
import { Waiters } from './waiters.ts'

/** So many tiles are waited for at once: some screens full. */
const MOST = 64

/** Tiles that are being cut. */
interface Cutting {
  folder: string
  since: number
  /** How many are. */
  cut: number
}

/** What is being made of a page. */
interface Making {
  kind: TileKind
  early: EarlyTiles
  waiters: Waiters<TilePlace, PictureFile>
}

/**
 * The tiles of a page for those who ask: of all that were made, or, while they are being made, each as soon as it is
 * there, out of turn where that is sooner.
 */
export class PageTiles {
  readonly #page: Pick<Page, 'levels' | 'make' | 'limits'>
  readonly #now: () => number
  #kept: { folder: string; manifest: Manifest } | undefined
  #making: Making | undefined
  #cutting: Cutting | undefined
  #ending = Promise.resolve()

  constructor(page: Pick<Page, 'levels' | 'make' | 'limits'>, now: () => number) {
    this.#page = page
    this.#now = now
  }

  /** @param signal ends the waiting. @returns null when there is no such tile, or none is being made */
  async tile(place: TilePlace, signal?: AbortSignal): Promise<PictureFile | null> {
    if (!hasTile(this.#page.levels, place)) return null
    if (this.#making !== undefined) return this.#making.waiters.ask(place, signal)
    return this.#keptTile(place)
  }

  /** What happens while the pictures are made. */
  take(event: MakingEvent): void {
    switch (event.is) {
      case 'cutting':
        this.#cutting = event.into === null ? undefined : { folder: event.into, since: this.#now(), cut: 0 }
        break
      case 'cut':
        if (this.#cutting !== undefined) this.#cutting.cut = event.tiles
        break
      case 'whole':
        this.#begin(event)
        break
      case 'ready':
        this.#kept = event
        break
      default:
    }
  }

  /** Nothing more is made: whoever waits for a tile gets it now or not at all. Resolves when nothing runs any more. */
  end(): Promise<void> {
    const making = this.#making
    if (making !== undefined) {
      this.#making = undefined
      this.#ending = endMaking(making)
    }
    return this.#ending
  }

  /** None are there, and those asked for from now on are waited for. */
  #begin({ file, folder, whole: { kind, took } }: Extract<MakingEvent, { is: 'whole' }>): void {
    this.#kept = undefined
    const early = new EarlyTiles({ page: this.#page, file, folder, kind, read: took, now: this.#now })
    const making: Making = {
      kind,
      early,
      waiters: new Waiters(
        (place) => this.#madeTile(making, place),
        (wanted) => early.consider(wanted, this.#pace()),
        MOST,
      ),
    }
    this.#making = making
  }

  #pace(): { cutFor: number | undefined; cut: number } {
    if (this.#cutting === undefined) return { cutFor: undefined, cut: 0 }
    const all = this.#page.levels.reduce((sum, level) => sum + tilesOf(level), 0)
    return { cutFor: this.#now() - this.#cutting.since, cut: this.#cutting.cut / all }
  }

  async #keptTile(place: TilePlace): Promise<PictureFile | null> {
    if (this.#kept === undefined) return null
    const { folder, manifest } = this.#kept
    const columns = this.#page.levels[place.level]?.columns ?? 0
    const size = manifest.tiles[place.level]?.[place.row * columns + place.column]
    return readTile(join(folder, TILES, tileFile(place, manifest.type)), manifest.type, size)
  }

  async #madeTile({ kind, early }: Making, place: TilePlace): Promise<PictureFile | null> {
    if (this.#kept !== undefined) return this.#keptTile(place)
    const cutting = this.#cutting
    const file = early.file(place)
    const made = file === undefined ? null : await readTile(file, kind.type)
    if (made !== null || cutting === undefined) return made
    return readTile(cutFile(cutting.folder, this.#page.levels.length, place, kind.type), kind.type)
  }
}

async function endMaking({ waiters, early }: Making): Promise<void> {
  await waiters.look()
  waiters.end()
  await early.end()
}
