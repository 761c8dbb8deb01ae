/** The last chunk of a PNG, whole. PNG (ISO/IEC 15948:2004), 11.2.5. */
const PNG_END = Buffer.from('0000000049454e44ae426082', 'hex')

/** End of image. Within coded data 0xFF is always followed by 0x00 or a restart. ITU-T T.81, B.1.1. */
const JPEG_END = Buffer.from('ffd9', 'hex')

/** Whether a tile's file ends as it must, so that it isn't one that is still being written. */
export function isWhole(bytes: Buffer, type: 'png' | 'jpeg'): boolean {
  const end = type === 'png' ? PNG_END : JPEG_END
  return bytes.length > end.length && bytes.subarray(-end.length).equals(end)
}
