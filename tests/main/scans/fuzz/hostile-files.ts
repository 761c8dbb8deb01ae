import { constants, deflateRawSync, deflateSync } from 'node:zlib'
import { greyDrawing } from '../kinds/drawing.ts'
import { PdfFile, pdfOf, reference } from '../kinds/pdf/pdf-file.ts'
import { flatePicture } from '../kinds/pdf/pdf-picture.ts'
import { pngChunk } from '../kinds/png/png-file.ts'
import { tiffFile } from '../kinds/tiff/tiff-file.ts'

export interface HostileFile {
  name: string
  file: string
  make: () => Buffer
  /** What the refusal is about, where it is one thing only. */
  about?: RegExp
  /** Whether whoever reads it is at it for longer than a person waits, if nobody ends that. */
  hangs?: true
}

const MILLION = 1_000_000

/**
 * So many million zeros, packed: the same packed million over and over, each of which stands for itself. Source of the
 * frame and of its check, which of n zeros is n (mod 65,521) and 1: RFC 1950, 2.2 and 8.2.
 */
function packedZeros(millions: number): Buffer {
  const one = deflateRawSync(Buffer.alloc(MILLION), { level: 9, finishFlush: constants.Z_FULL_FLUSH })
  const end = Buffer.from([0x03, 0x00, 0, 0, 0, 1])
  end.writeUInt16BE((millions * MILLION) % 65_521, 2)
  return Buffer.concat([Buffer.from([0x78, 0x9c]), ...Array.from({ length: millions }, () => one), end])
}

/** A PNG header of a size, and hardly anything after it. @param rows packed */
function pngOf(width: number, height: number, rows: Buffer): Buffer {
  const header = Buffer.alloc(13)
  header.writeUInt32BE(width, 0)
  header.writeUInt32BE(height, 4)
  header.writeUInt8(1, 8)
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    pngChunk('IHDR', header),
    pngChunk('IDAT', rows),
    pngChunk('IEND', Buffer.alloc(0)),
  ])
}

const grey = greyDrawing()

const onePage = (image: string, data: Buffer, box: [number, number, number, number] = [0, 0, 100, 60]) => {
  const file = new PdfFile()
  const number = file.stream(`/Type /XObject /Subtype /Image ${image}`, data)
  const resources = `/XObject << /Scan ${reference(number)} >>`
  return pdfOf(file, [{ box, content: `q ${box[2]} 0 0 ${box[3]} 0 0 cm /Scan Do Q`, resources }])
}

/** A page that draws itself through a form, for ever. */
function formInItself(): Buffer {
  const file = new PdfFile()
  const form = file.reserve()
  const resources = `/XObject << /Form ${reference(form)} >>`
  const body = `<< /Type /XObject /Subtype /Form /BBox [0 0 100 60] /Resources << ${resources} >> /Length 8 >>`
  file.set(form, `${body}\nstream\n/Form Do\nendstream`)
  return pdfOf(file, [{ box: [0, 0, 100, 60], content: '/Form Do', resources }])
}

/** Forms that each draw the next ten times: ten to the ninth lines in all. */
function formsInForms(): Buffer {
  const file = new PdfFile()
  let inner = file.stream('/Type /XObject /Subtype /Form /BBox [0 0 100 60]', '0 0 m 100 60 l S')
  for (let depth = 0; depth < 9; depth++) {
    const resources = `/XObject << /Form ${reference(inner)} >>`
    const entries = `/Type /XObject /Subtype /Form /BBox [0 0 100 60] /Resources << ${resources} >>`
    inner = file.stream(entries, '/Form Do '.repeat(10))
  }
  return pdfOf(file, [
    { box: [0, 0, 100, 60], content: '/Form Do', resources: `/XObject << /Form ${reference(inner)} >>` },
  ])
}

/** A tree of pages whose branch is itself. */
function pagesInThemselves(): Buffer {
  const file = new PdfFile()
  const tree = file.reserve()
  file.set(tree, `<< /Type /Pages /Kids [${reference(tree)} ${reference(tree)}] /Count 100000000 >>`)
  return file.bytes(file.add(`<< /Type /Catalog /Pages ${reference(tree)} >>`))
}

/** A TIFF file whose next page is its first. */
function pageAfterItself(): Buffer {
  const file = tiffFile([{ picture: grey, photometric: 'black is zero' }])
  const first = file.readUInt32LE(4)
  file.writeUInt32LE(first, first + 2 + 12 * file.readUInt16LE(first))
  return file
}

/** As wide as a page may be: 14,400 units. Source: ISO 32000-1, annex C.2. */
export const widestPage = (): Buffer =>
  pdfOf(new PdfFile(), [{ box: [0, 0, 14_400, 14_400], content: '0 0 m 9 9 l S' }])

export const HOSTILE_FILES: readonly HostileFile[] = [
  {
    name: 'a PNG of more pixels than are taken in',
    file: 'vast.png',
    make: () => pngOf(60_000, 60_000, deflateSync(Buffer.alloc(1000))),
    about: /pixels/,
  },
  {
    name: 'a PNG of 30,000 by 30,000 pixels that ends early',
    file: 'early end.png',
    make: () => pngOf(30_000, 30_000, deflateSync(Buffer.alloc(1000))),
  },
  {
    name: 'a PNG whose few bytes unfold to many, more than its rows need',
    file: 'unfolding.png',
    make: () => pngOf(97, 61, packedZeros(200)),
  },
  {
    name: 'a TIFF whose next page is its first',
    file: 'round.tif',
    make: pageAfterItself,
  },
  {
    name: 'a TIFF of 4,294,967,295 rows',
    file: 'tall.tif',
    make: () => {
      const file = tiffFile([{ picture: grey, photometric: 'black is zero', rows: 1 }])
      file.writeUInt32LE(0xffffffff, 8 + 2 + 12 + 8)
      return file
    },
  },
  {
    name: 'a PDF picture of 2,147,483,647 bits a sample',
    file: 'bits.pdf',
    hangs: true,
    make: () =>
      onePage(
        '/Width 97 /Height 61 /ColorSpace /DeviceRGB /BitsPerComponent 2147483647 /Filter /FlateDecode',
        deflateSync(Buffer.alloc(97 * 61 * 3)),
      ),
  },
  {
    name: 'a PDF picture of 60,000 by 60,000 pixels that ends early',
    file: 'vast picture.pdf',
    make: () =>
      onePage(
        '/Width 60000 /Height 60000 /ColorSpace /DeviceGray /BitsPerComponent 8 /Filter /FlateDecode',
        deflateSync(Buffer.alloc(1000)),
      ),
  },
  {
    name: 'a PDF picture whose few bytes unfold to many, and again',
    file: 'unfolding.pdf',
    hangs: true,
    make: () =>
      onePage(
        '/Width 97 /Height 61 /ColorSpace /DeviceGray /BitsPerComponent 8 /Filter [/FlateDecode /FlateDecode]',
        deflateSync(packedZeros(300), { level: 9 }),
      ),
  },
  {
    name: 'a PDF page of drawn lines, a mile wide',
    file: 'mile.pdf',
    make: () => pdfOf(new PdfFile(), [{ box: [0, 0, 4_561_920, 4_561_920], content: '0 0 m 9 9 l S' }]),
    about: /larger than a page of a PDF can be/,
  },
  { name: 'a PDF form that draws itself', file: 'itself.pdf', make: formInItself },
  {
    name: 'a PDF of forms in forms, ten to the ninth of them',
    file: 'forms.pdf',
    hangs: true,
    make: formsInForms,
  },
  { name: 'a PDF whose pages are their own branches', file: 'branches.pdf', make: pagesInThemselves },
  {
    name: 'a PDF that says it has 100,000 pages and has one',
    file: 'many.pdf',
    make: () => {
      const file = new PdfFile()
      const number = flatePicture(file, grey)
      const whole = pdfOf(file, [
        {
          box: [0, 0, 97, 61],
          content: 'q 97 0 0 61 0 0 cm /Scan Do Q',
          resources: `/XObject << /Scan ${reference(number)} >>`,
        },
      ])
      return Buffer.from(whole.toString('latin1').replace('/Count 1', '/Count 100000'), 'latin1')
    },
  },
]
