import { directory, type Field, Order, TAG } from '../tiff/fields.ts'

/** A segment of a JPEG file: marker, length, data. Source: ITU-T T.81, B.1.1.4. */
export function segment(marker: number, data: Buffer): Buffer {
  const head = Buffer.alloc(4)
  head.writeUInt16BE(marker, 0)
  head.writeUInt16BE(data.length + 2, 2)
  return Buffer.concat([head, data])
}

export interface JpegHead {
  /** Dots per inch in the JFIF header; without it the header gives an aspect ratio only. */
  jfifDpi?: readonly [number, number]
  exif?: { orientation?: number; dpi?: number; order?: 'II' | 'MM' }
}

const APP0 = 0xffe0
const APP1 = 0xffe1

const jfif = (dpi: readonly [number, number] | undefined): Buffer => {
  const data = Buffer.alloc(14)
  data.write('JFIF\0', 'latin1')
  data.writeUInt16BE(0x0102, 5)
  data.writeUInt8(dpi === undefined ? 0 : 1, 7)
  data.writeUInt16BE(dpi?.[0] ?? 1, 8)
  data.writeUInt16BE(dpi?.[1] ?? 1, 10)
  return segment(APP0, data)
}

function exifSegment({ orientation, dpi, order: mark = 'MM' }: NonNullable<JpegHead['exif']>): Buffer {
  const order = new Order(mark)
  const fields: Field[] = []
  if (orientation !== undefined) fields.push({ tag: TAG.orientation, type: 'short', values: [orientation] })
  if (dpi !== undefined) {
    fields.push({ tag: TAG.xResolution, type: 'rational', values: [[dpi, 1]] })
    fields.push({ tag: TAG.yResolution, type: 'rational', values: [[dpi, 1]] })
    fields.push({ tag: TAG.resolutionUnit, type: 'short', values: [2] })
  }
  const tiff = Buffer.concat([
    Buffer.from(mark, 'latin1'),
    order.short(42),
    order.long(8),
    directory(fields, 8, order, () => 0),
  ])
  return segment(APP1, Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]))
}

/** A JPEG file with the application segments it has taken out and others put in. Source: JFIF 1.02 (ITU-T T.871); Exif 2.3. */
export function withHead(jpeg: Buffer, { jfifDpi, exif }: JpegHead): Buffer {
  let at = 2
  while ((jpeg.readUInt16BE(at) & 0xfff0) === 0xffe0) at += 2 + jpeg.readUInt16BE(at + 2)
  const heads = exif === undefined ? [jfif(jfifDpi)] : [jfif(jfifDpi), exifSegment(exif)]
  return Buffer.concat([jpeg.subarray(0, 2), ...heads, jpeg.subarray(at)])
}
