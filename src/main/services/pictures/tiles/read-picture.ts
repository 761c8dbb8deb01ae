import { readFile, realpath } from 'node:fs/promises'
import type { TileKind } from '../layout/tile-kind.ts'
import { isWhole } from './whole-file.ts'

/** A picture's bytes and media type. */
export interface PictureFile {
  bytes: Uint8Array
  type: string
}

/** The bytes of a file that lies just there; null when there is none: a link must not lead to another file. */
export async function readPicture(path: string): Promise<Buffer | null> {
  try {
    return (await realpath(path)) === path ? await readFile(path) : null
  } catch {
    return null
  }
}

/** A tile; null when there is none, or it is not whole. @param size bytes that it must have, where that is known */
export async function readTile(
  path: string,
  type: TileKind['type'],
  size?: number,
): Promise<PictureFile | null> {
  const bytes = await readPicture(path)
  if (bytes === null || (size !== undefined && bytes.length !== size) || !isWhole(bytes, type)) return null
  return { bytes, type: `image/${type}` }
}
