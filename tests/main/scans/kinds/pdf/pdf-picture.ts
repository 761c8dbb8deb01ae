import { deflateSync } from 'node:zlib'
import { group3 } from '../ccitt/group-3.ts'
import { group4 } from '../ccitt/group-4.ts'
import { jbig2Page } from '../jbig2/generic-region.ts'
import { jpxFile } from '../jpx/jpx-file.ts'
import { type Picture, packedRows } from '../picture.ts'
import type { PdfFile } from './pdf-file.ts'

const SPACES = { 1: '/DeviceGray', 2: '', 3: '/DeviceRGB', 4: '/DeviceCMYK' } as const

const entriesOf = ({ width, height, samples, bits }: Picture, space: string = SPACES[samples]): string =>
  `/Type /XObject /Subtype /Image /Width ${width} /Height ${height} ` +
  `/ColorSpace ${space} /BitsPerComponent ${bits}`

/** A picture compressed by Flate, or not at all. Source: ISO 32000-1, 7.4.4 and 8.9.5. */
export function flatePicture(file: PdfFile, picture: Picture, compressed = true): number {
  const bytes = Buffer.concat(packedRows(picture))
  if (!compressed) return file.stream(entriesOf(picture), bytes)
  return file.stream(`${entriesOf(picture)} /Filter /FlateDecode`, deflateSync(bytes))
}

/** A picture of places in a list of colours. Source: ISO 32000-1, 8.6.6.3. */
export function indexedPicture(
  file: PdfFile,
  picture: Picture,
  colours: readonly (readonly [number, number, number])[],
): number {
  const list = Buffer.from(colours.flat()).toString('hex')
  const space = `[/Indexed /DeviceRGB ${colours.length - 1} <${list}>]`
  return file.stream(
    `${entriesOf(picture, space)} /Filter /FlateDecode`,
    deflateSync(Buffer.concat(packedRows(picture))),
  )
}

/** Source: ISO 32000-1, 7.4.6: K below 0 is Group 4; 0 is Group 3, one-dimensional. */
export function faxPicture(file: PdfFile, picture: Picture, group: 3 | 4 = 4): number {
  const { width, height } = picture
  const parameters = `/DecodeParms << /K ${group === 4 ? -1 : 0} /Columns ${width} /Rows ${height} >>`
  return file.stream(
    `${entriesOf(picture)} /Filter /CCITTFaxDecode ${parameters}`,
    group === 4 ? group4(picture) : group3(picture, true),
  )
}

/** A stencil: black is painted where its samples are 0. Source: ISO 32000-1, 8.9.6.2. */
export const faxStencil = (file: PdfFile, picture: Picture): number =>
  file.stream(
    `/Type /XObject /Subtype /Image /Width ${picture.width} /Height ${picture.height} /ImageMask true ` +
      `/BitsPerComponent 1 /Filter /CCITTFaxDecode ` +
      `/DecodeParms << /K -1 /Columns ${picture.width} /Rows ${picture.height} >>`,
    group4(picture),
  )

/** Source: ISO 32000-1, 7.4.7. */
export const jbig2Picture = (file: PdfFile, picture: Picture): number =>
  file.stream(`${entriesOf(picture)} /Filter /JBIG2Decode`, jbig2Page(picture))

/** Source: ISO 32000-1, 7.4.9. */
export const jpxPicture = async (file: PdfFile, picture: Picture): Promise<number> =>
  file.stream(`${entriesOf(picture)} /Filter /JPXDecode`, await jpxFile(picture))

/** A JPEG file as it is, of the size and samples of `picture`. Source: ISO 32000-1, 7.4.8. */
export const dctPicture = (file: PdfFile, picture: Picture, jpeg: Buffer): number =>
  file.stream(`${entriesOf(picture)} /Filter /DCTDecode`, jpeg)
