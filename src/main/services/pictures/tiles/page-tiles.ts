import { join } from 'node:path'
import type { PyramidLevel } from '../../../../contract/pictures.ts'
import type { Manifest } from '../cache/manifest.ts'
import type { TilePlace } from '../layout/block.ts'
import { cutFile, hasTile, TILES, tileFile } from '../layout/picture-names.ts'
import type { TileKind } from '../layout/tile-kind.ts'
import { Asked } from './asked.ts'
import { type EarlyOf, EarlyTiles } from './early-tiles.ts'
import { type PictureFile, readTile } from './read-picture.ts'

/** So many tiles are waited for at once: some screens full. */
const MOST = 64

/** Tiles that are being cut. */
interface Cutting {
  folder: string
  since: number
  /** Share that is done. */
  cut: number
}

/** What is being made of a page. */
interface Making {
  kind: TileKind
  early: EarlyTiles
  asked: Asked<TilePlace, PictureFile>
}

/**
 * The tiles of a page for those who ask: of all that were made, or, while they are being made, each as soon as it is
 * there, out of turn where that is sooner.
 */
export class PageTiles {
  readonly #levels: readonly PyramidLevel[]
  readonly #now: () => number
  #kept: { folder: string; manifest: Manifest } | undefined
  #making: Making | undefined
  #cutting: Cutting | undefined
  #ending = Promise.resolve()

  constructor(levels: readonly PyramidLevel[], now: () => number) {
    this.#levels = levels
    this.#now = now
  }

  /** @param signal ends the waiting. @returns null when there is no such tile, or none is being made */
  async tile(place: TilePlace, signal?: AbortSignal): Promise<PictureFile | null> {
    if (!hasTile(this.#levels, place)) return null
    if (this.#making !== undefined) return this.#making.asked.ask(place, signal)
    return this.#keptTile(place)
  }

  /** All are there. */
  keep(folder: string, manifest: Manifest): void {
    this.#kept = { folder, manifest }
  }

  /** None are there, and those asked for from now on are waited for. */
  begin(of: Omit<EarlyOf, 'levels' | 'now'>): void {
    this.#kept = undefined
    const early = new EarlyTiles({ ...of, levels: this.#levels, now: this.#now })
    const making: Making = {
      kind: of.kind,
      early,
      asked: new Asked(
        (place) => this.#madeTile(making, place),
        (wanted) => early.consider(wanted, this.#pace()),
        MOST,
      ),
    }
    this.#making = making
  }

  /** They are being cut into this folder; undefined: no more. */
  cutInto(folder: string | undefined): void {
    this.#cutting = folder === undefined ? undefined : { folder, since: this.#now(), cut: 0 }
  }

  /** @param share that is cut */
  cut(share: number): void {
    if (this.#cutting !== undefined) this.#cutting.cut = share
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

  #pace(): { cutFor: number | undefined; cut: number } {
    if (this.#cutting === undefined) return { cutFor: undefined, cut: 0 }
    return { cutFor: this.#now() - this.#cutting.since, cut: this.#cutting.cut }
  }

  async #keptTile(place: TilePlace): Promise<PictureFile | null> {
    if (this.#kept === undefined) return null
    const { folder, manifest } = this.#kept
    const size =
      manifest.tiles[place.level]?.[place.row * (this.#levels[place.level]?.columns ?? 0) + place.column]
    return readTile(join(folder, TILES, tileFile(place, manifest.type)), manifest.type, size)
  }

  async #madeTile({ kind, early }: Making, place: TilePlace): Promise<PictureFile | null> {
    if (this.#kept !== undefined) return this.#keptTile(place)
    const cutting = this.#cutting
    const file = early.file(place)
    const made = file === undefined ? null : await readTile(file, kind.type)
    if (made !== null || cutting === undefined) return made
    return readTile(cutFile(cutting.folder, this.#levels.length, place, kind.type), kind.type)
  }
}

async function endMaking({ asked, early }: Making): Promise<void> {
  await asked.look()
  asked.end()
  await early.end()
}
