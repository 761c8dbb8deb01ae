import { openRaster } from './open-raster.ts'

const PAPER = '#ffffff'
const QUALITY = 80

/** A small picture of a page, turned as the file asks. @param side its longer side at most, pixels @returns JPEG */
export async function rasterThumbnail(path: string, page: number, side: number): Promise<Buffer> {
  const picture = await openRaster(path, page, { failOn: 'none', autoOrient: true })
  return picture
    .resize(side, side, { fit: 'inside', withoutEnlargement: true })
    .flatten({ background: PAPER })
    .toColourspace('srgb')
    .jpeg({ quality: QUALITY })
    .toBuffer()
}
