import { readFile, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'
import { TILE } from '../../../../contract/picture-pyramid.ts'
import type { PyramidLevel } from '../../../../contract/pictures.ts'
import type { Sheet } from '../../../../core/job/model/types.ts'
import { reason } from '../../words/services-words.ts'
import { PyramidError } from '../faults/pyramid-error.ts'
import { GROUND, MAKE, MANIFEST, OVERVIEW, THUMBNAIL, TILES } from '../layout/picture-names.ts'
import { type TileKind, tileKindSchema } from '../layout/tile-kind.ts'
import { putInPlace } from './put-in-place.ts'
import { tileSizes } from './tile-sizes.ts'

const count = z.int().min(1)

/** What the pictures in a folder were made of and how, and how many bytes each has. Written when all are there. */
const manifestSchema = z.strictObject({
  /** The way of making: another one's pictures are not these. */
  make: z.literal(MAKE),
  /** The libraries that made them, to be known later. */
  tool: z.string().max(200),
  /** Of the scan's file, whole. */
  sha256: z.string(),
  page: count,
  width: count,
  height: count,
  drawnAt: z.number().optional(),
  tile: z.literal(TILE),
  ...tileKindSchema.shape,
  whole: z.record(z.string(), count),
  /** Of each level, row by row. */
  tiles: z.array(z.array(count)),
})

export type Manifest = z.infer<typeof manifestSchema>

/** No pyramid has so many tiles that its manifest is longer. Bytes. */
const MOST = 16 * 1024 ** 2

/** The pictures of a sheet whole. */
export const WHOLE = [OVERVIEW, THUMBNAIL, GROUND] as const

export interface Described {
  scan: Sheet['scan']
  levels: readonly PyramidLevel[]
}

/** What the pictures are made of. */
const madeOf = ({ sha256, page, width, height, drawnAt }: Sheet['scan']) => ({
  sha256: sha256.toLowerCase(),
  page,
  width,
  height,
  ...(drawnAt === undefined ? {} : { drawnAt }),
})

/**
 * The manifest of a folder whose pictures can be used: it is of this page of this very scan, made as they are made now,
 * and every file is there with the bytes that it had. What is not checked is what the files hold: whoever writes
 * pictures and a manifest that suit each other into a job's `.cache` is believed, as whoever writes its job.json is.
 * @returns null when they can't be used
 */
export async function readManifest(folder: string, { scan, levels }: Described): Promise<Manifest | null> {
  try {
    const path = join(folder, MANIFEST)
    if ((await stat(path)).size > MOST) return null
    const found = manifestSchema.parse(JSON.parse(await readFile(path, 'utf8')))
    for (const [key, value] of Object.entries(madeOf(scan))) {
      if (found[key as keyof Manifest] !== value) return null
    }
    if (found.drawnAt !== scan.drawnAt) return null
    const whole = await wholeSizes(folder)
    if (WHOLE.some((name) => found.whole[name] !== whole[name])) return null
    const sizes = await tileSizes(join(folder, TILES), levels, found.type)
    return sizes !== null && JSON.stringify(sizes) === JSON.stringify(found.tiles) ? found : null
  } catch {
    return null
  }
}

/** @throws PyramidError when a tile is missing; Error when a picture of the whole is */
export async function writeManifest(
  folder: string,
  { scan, levels }: Described,
  kind: TileKind,
  tool: string,
  mark: string,
): Promise<Manifest> {
  const tiles = await tileSizes(join(folder, TILES), levels, kind.type)
  if (tiles === null) throw new PyramidError(reason('pyramid.tile-missing'))
  const manifest: Manifest = {
    make: MAKE,
    tool,
    ...madeOf(scan),
    tile: TILE,
    ...kind,
    whole: await wholeSizes(folder),
    tiles,
  }
  await putInPlace(join(folder, MANIFEST), `${JSON.stringify(manifest)}\n`, mark)
  return manifest
}

/** Bytes of each picture of the whole sheet. @throws Error when one is missing or empty */
export async function wholeSizes(folder: string): Promise<Record<string, number>> {
  const sizes: Record<string, number> = {}
  for (const name of WHOLE) {
    const entry = await stat(join(folder, name))
    if (!entry.isFile() || entry.size === 0) throw new Error(`${name} is missing`)
    sizes[name] = entry.size
  }
  return sizes
}
