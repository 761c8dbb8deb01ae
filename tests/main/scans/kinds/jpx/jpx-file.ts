import openjpeg from '@cornerstonejs/codec-openjpeg'
import type { Picture } from '../picture.ts'

const box = (type: string, data: Buffer): Buffer => {
  const head = Buffer.alloc(8)
  head.writeUInt32BE(data.length + 8)
  head.write(type, 4, 'latin1')
  return Buffer.concat([head, data])
}

const GREYSCALE = 17
const SRGB = 16

/** A lossless JPEG 2000 file of a picture of 8 bits. Source: ITU-T T.800, annex I for the boxes. */
export async function jpxFile({ width, height, samples, bits, values }: Picture): Promise<Buffer> {
  const { J2KEncoder } = await openjpeg({ print: () => undefined })
  const encoder = new J2KEncoder()
  const frame = { width, height, bitsPerSample: bits, componentCount: samples, isSigned: false }
  encoder.getDecodedBuffer(frame).set(Uint8Array.from(values))
  encoder.setQuality(true, 0)
  encoder.setDecompositions(3)
  encoder.encode()
  const code = Buffer.from(encoder.getEncodedBuffer())
  encoder.delete()
  const header = Buffer.alloc(14)
  header.writeUInt32BE(height, 0)
  header.writeUInt32BE(width, 4)
  header.writeUInt16BE(samples, 8)
  header.writeUInt8(bits - 1, 10)
  header.writeUInt8(7, 11)
  const colour = Buffer.from([1, 0, 0, 0, 0, 0, samples === 1 ? GREYSCALE : SRGB])
  return Buffer.concat([
    box('jP  ', Buffer.from([0x0d, 0x0a, 0x87, 0x0a])),
    box('ftyp', Buffer.from('jp2 \0\0\0\0jp2 ', 'latin1')),
    box('jp2h', Buffer.concat([box('ihdr', header), box('colr', colour)])),
    box('jp2c', code),
  ])
}
