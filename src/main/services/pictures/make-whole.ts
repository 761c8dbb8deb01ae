import { randomBytes } from 'node:crypto'
import { rename, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { groundOf } from './ground.ts'
import { openPage } from './open-page.ts'
import { GROUND, OVERVIEW, THUMBNAIL } from './picture-names.ts'
import { GROUND_SIDE, OVERVIEW_SIDE, type Size, THUMBNAIL_SIDE, within } from './sizes.ts'

const QUALITY = 88

async function putInPlace(path: string, bytes: Uint8Array): Promise<void> {
  const temporary = `${path}.${randomBytes(8).toString('hex')}.tmp`
  try {
    await writeFile(temporary, bytes, { flag: 'wx' })
    await rename(temporary, path)
  } catch (error) {
    await rm(temporary, { force: true }).catch(() => undefined)
    throw error
  }
}

/**
 * Makes the picture of a whole sheet. Where the file can be decoded at a fraction of its size it is, so that the
 * picture is there sooner; it may then lie off by less than one of its own pixels at the right and lower edges.
 * @param size of the page, pixels
 */
export async function makeOverview(path: string, page: number, size: Size, folder: string): Promise<void> {
  const { width, height } = within(size, OVERVIEW_SIDE)
  const picture = await openPage(path, page)
  const bytes = await picture.resize(width, height, { fit: 'fill' }).jpeg({ quality: QUALITY }).toBuffer()
  await putInPlace(join(folder, OVERVIEW), bytes)
}

/** Makes the small picture of a sheet, and its ground, of the picture of the whole. */
export async function makeFromOverview(folder: string): Promise<void> {
  const { default: sharp } = await import('sharp')
  const overview = join(folder, OVERVIEW)
  const { data, info } = await sharp(overview).greyscale().raw().toBuffer({ resolveWithObject: true })
  const small = within(info, THUMBNAIL_SIDE)
  const thumbnail = sharp(overview).resize(small.width, small.height, { fit: 'fill' })
  await putInPlace(join(folder, THUMBNAIL), await thumbnail.jpeg({ quality: QUALITY }).toBuffer())
  const ground = groundOf({ data, width: info.width, height: info.height }, within(info, GROUND_SIDE))
  const raw = { width: ground.width, height: ground.height, channels: 1 as const }
  await putInPlace(
    join(folder, GROUND),
    await sharp(ground.data, { raw }).toColourspace('b-w').png().toBuffer(),
  )
}
