/** Segments that carry no length. */
const START = 0xffd8
const START_OF_SCAN = 0xffda
const APP0 = 0xffe0
const APP1 = 0xffe1
const X_RESOLUTION = 0x011a

/**
 * Whether a JPEG file states its resolution: in its JFIF header with a unit, or in its Exif tags. Decoders give
 * 72 dpi for files that state none, which must not pass for a scanner's word.
 * @param head the beginning of the file, up to and beyond its application segments
 * Source: JFIF 1.02 (ITU-T T.871), Exif 2.3, TIFF 6.0.
 */
export function jpegStatesDensity(head: Buffer): boolean {
  if (head.length < 4 || head.readUInt16BE(0) !== START) return false
  for (let at = 2; at + 4 <= head.length; ) {
    const marker = head.readUInt16BE(at)
    if (marker === START_OF_SCAN || marker >> 8 !== 0xff) return false
    const length = head.readUInt16BE(at + 2)
    const body = head.subarray(at + 4, at + 2 + length)
    if (marker === APP0 && jfifHasUnit(body)) return true
    if (marker === APP1 && exifHasResolution(body)) return true
    at += 2 + length
  }
  return false
}

/** Unit 0 says that the numbers are an aspect ratio only. */
const jfifHasUnit = (body: Buffer): boolean =>
  body.length >= 8 && body.toString('latin1', 0, 5) === 'JFIF\0' && body.readUInt8(7) !== 0

function exifHasResolution(body: Buffer): boolean {
  if (body.length < 14 || body.toString('latin1', 0, 6) !== 'Exif\0\0') return false
  const tiff = body.subarray(6)
  const little = tiff.toString('latin1', 0, 2) === 'II'
  const u16 = (at: number): number => (little ? tiff.readUInt16LE(at) : tiff.readUInt16BE(at))
  const directory = little ? tiff.readUInt32LE(4) : tiff.readUInt32BE(4)
  if (directory + 2 > tiff.length) return false
  const entries = u16(directory)
  for (let i = 0; i < entries; i++) {
    const at = directory + 2 + 12 * i
    if (at + 2 > tiff.length) return false
    if (u16(at) === X_RESOLUTION) return true
  }
  return false
}
