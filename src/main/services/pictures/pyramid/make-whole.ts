import { join } from 'node:path'
import type { PixelSize } from '../../scans/page/pixel-size.ts'
import { putInPlace } from '../cache/put-in-place.ts'
import { GROUND, OVERVIEW, THUMBNAIL } from '../layout/picture-names.ts'
import { GROUND_SIDE, OVERVIEW_SIDE, THUMBNAIL_SIDE, within } from '../layout/sizes.ts'
import type { TileKind } from '../layout/tile-kind.ts'
import { groundOf } from './ground.ts'
import { openPage, type PageInFile } from './open-page.ts'

const QUALITY = 88

export interface WholeWanted {
  file: PageInFile
  kind: TileKind
  /** Of the page, pixels. */
  size: PixelSize
  /** What follows the name of a file that is not whole yet. */
  mark: string
  /** Where the pictures come. */
  folder: string
}

/**
 * Makes the picture of a whole sheet. Where the file can be decoded at a fraction of its size it is, so that the
 * picture is there sooner; it may then lie off by less than one of its own pixels at the right and lower edges.
 */
export async function makeOverview({ file, kind, size, mark, folder }: WholeWanted): Promise<void> {
  const { width, height } = within({ width: size.width, height: size.height }, OVERVIEW_SIDE)
  const picture = await openPage(file, kind)
  const bytes = await picture.resize(width, height, { fit: 'fill' }).jpeg({ quality: QUALITY }).toBuffer()
  await putInPlace(join(folder, OVERVIEW), bytes, mark)
}

/** Makes the small picture of a sheet, and its ground, of the picture of the whole. */
export async function makeFromOverview({ mark, folder }: WholeWanted): Promise<void> {
  const { default: sharp } = await import('sharp')
  const overview = join(folder, OVERVIEW)
  const { data, info } = await sharp(overview).greyscale().raw().toBuffer({ resolveWithObject: true })
  const small = within(info, THUMBNAIL_SIDE)
  const thumbnail = sharp(overview).resize(small.width, small.height, { fit: 'fill' })
  await putInPlace(join(folder, THUMBNAIL), await thumbnail.jpeg({ quality: QUALITY }).toBuffer(), mark)
  const ground = groundOf({ data, width: info.width, height: info.height }, within(info, GROUND_SIDE))
  const raw = { width: ground.width, height: ground.height, channels: 1 as const }
  const png = await sharp(ground.data, { raw }).toColourspace('b-w').png().toBuffer()
  await putInPlace(join(folder, GROUND), png, mark)
}
