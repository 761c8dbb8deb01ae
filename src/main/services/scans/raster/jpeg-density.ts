import { type Density, soundDensity } from '../page/density.ts'
import { TAG } from '../tiff/fields.ts'
import { type BytesAt, readDirectories } from '../tiff/read-directories.ts'

/** Segments that carry no length. */
const START = 0xffd8
const START_OF_SCAN = 0xffda
const APP0 = 0xffe0
const APP1 = 0xffe1
const CENTIMETRES_PER_INCH = 2.54

/**
 * The resolution that a JPEG file states, pixels per inch: in its JFIF header with a unit, or else in its Exif tags.
 * Decoders give 72 dpi for files that state none, which must not pass for a scanner's word.
 * @param head the beginning of the file, up to and beyond its application segments
 * Source: JFIF 1.02 (ITU-T T.871), Exif 2.3, TIFF 6.0.
 */
export async function jpegDensity(head: Buffer): Promise<Density | undefined> {
  if (head.length < 4 || head.readUInt16BE(0) !== START) return undefined
  let stated: Density | undefined
  for (let at = 2; at + 4 <= head.length; ) {
    const marker = head.readUInt16BE(at)
    if (marker === START_OF_SCAN || marker >> 8 !== 0xff) return stated
    const length = head.readUInt16BE(at + 2)
    if (length < 2) return stated
    const body = head.subarray(at + 4, at + 2 + length)
    if (marker === APP0) stated ??= jfifDensity(body)
    if (marker === APP1 && body.toString('latin1', 0, 6) === 'Exif\0\0')
      stated ??= await exifDensity(body.subarray(6))
    at += 2 + length
  }
  return stated
}

/** Unit 0 says that the numbers are an aspect ratio only. */
function jfifDensity(body: Buffer): Density | undefined {
  if (body.length < 12 || body.toString('latin1', 0, 5) !== 'JFIF\0') return undefined
  const unit = body.readUInt8(7)
  if (unit !== 1 && unit !== 2) return undefined
  const scale = unit === 2 ? CENTIMETRES_PER_INCH : 1
  return soundDensity(body.readUInt16BE(8) * scale, body.readUInt16BE(10) * scale)
}

/** @param tiff what Exif holds, which is a TIFF file; undefined too when its tags point out of it */
export async function exifDensity(tiff: Buffer): Promise<Density | undefined> {
  try {
    const { value: fields = [] } = await readDirectories(bytesOf(tiff)).next()
    const found = new Map<number, number>()
    for (const { tag, short, ratio } of fields) {
      if (tag === TAG.resolutionUnit) found.set(tag, short())
      if (tag === TAG.xResolution || tag === TAG.yResolution) found.set(tag, await ratio())
    }
    const x = found.get(TAG.xResolution)
    if (x === undefined) return undefined
    const scale = found.get(TAG.resolutionUnit) === 3 ? CENTIMETRES_PER_INCH : 1
    return soundDensity(x * scale, (found.get(TAG.yResolution) ?? x) * scale)
  } catch {
    return undefined
  }
}

const bytesOf =
  (tiff: Buffer): BytesAt =>
  async (at, length) => {
    if (at + length > tiff.length) throw new RangeError('out of the file')
    return tiff.subarray(at, at + length)
  }
