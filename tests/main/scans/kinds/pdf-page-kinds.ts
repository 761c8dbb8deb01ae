import { bitonalDrawing, colourDrawing, greyDrawing } from './drawing.ts'
import { PdfFile, type PdfPage, pdfOf, real, reference } from './pdf/pdf-file.ts'
import { faxPicture, flatePicture } from './pdf/pdf-picture.ts'
import { pdfKind, points } from './pdf-scanned-kinds.ts'
import { asGrey, type Picture, partOf } from './picture.ts'
import type { PageTruth, ScanKind } from './scan-kind.ts'

const grey = greyDrawing()
const DRAWN_AT = 400

const scanned = (picture: Picture, dpi: number): PageTruth => ({
  width: picture.width,
  height: picture.height,
  dpi,
  made: 'scanned',
  picture: asGrey(picture),
})

/** A page that `number` covers at a resolution. */
const covered = ({ width, height }: Picture, number: number, dpi: number, after = ''): PdfPage => {
  const [across, down] = [points(width, dpi), points(height, dpi)]
  return {
    box: [0, 0, across, down],
    content: `q ${real(across)} 0 0 ${real(down)} 0 0 cm /Scan Do Q ${after}`,
    resources: `/XObject << /Scan ${reference(number)} >>`,
  }
}

/** A scan cut into bands one below the other, as scanners of long sheets leave it. */
const banded = pdfKind('scan cut into bands', () => {
  const file = new PdfFile()
  const tops = [0, 20, 40]
  const names = tops.map((top, i) => {
    const band = partOf(grey, 0, top, grey.width, (tops[i + 1] ?? grey.height) - top)
    return { name: `/Band${i}`, band, top, number: flatePicture(file, band) }
  })
  const content = names.map(({ name, band, top }) => {
    const low = points(grey.height - top - band.height)
    return `q ${real(points(band.width))} 0 0 ${real(points(band.height))} 0 ${real(low)} cm ${name} Do Q`
  })
  const resources = names.map(({ name, number }) => `${name} ${reference(number)}`).join(' ')
  const box = [0, 0, points(grey.width), points(grey.height)] as const
  return {
    bytes: pdfOf(file, [{ box, content: content.join(' '), resources: `/XObject << ${resources} >>` }]),
    pages: [scanned(grey, 300)],
  }
})

/** Lettering that a machine read, laid over the scan and not shown. Source: ISO 32000-1, table 106, mode 3. */
const lettered = pdfKind('scan with hidden lettering', () => {
  const file = new PdfFile()
  const number = flatePicture(file, grey)
  const font = file.add('<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>')
  const page = covered(grey, number, 300, 'BT 3 Tr /F 4 Tf 2 4 Td (CHAIN DRUM) Tj ET')
  return {
    bytes: pdfOf(file, [{ ...page, resources: `${page.resources} /Font << /F ${reference(font)} >>` }]),
    pages: [scanned(grey, 300)],
  }
})

const second = bitonalDrawing({ width: 61, height: 83 })
const third = colourDrawing({ width: 113, height: 41 })

const several = pdfKind('three scanned pages unlike each other', () => {
  const file = new PdfFile()
  return {
    bytes: pdfOf(file, [
      covered(grey, flatePicture(file, grey), 300),
      covered(second, faxPicture(file, second), 600),
      covered(third, flatePicture(file, third), 200),
    ]),
    pages: [scanned(grey, 300), scanned(second, 600), scanned(third, 200)],
  }
})

/** Places of lines on drawn paper of 180 by 117 points: a half line of hair width counts from the middle. */
const PAPER = [180, 117] as const
const UPRIGHT_LINES = [18, 90.5, 150.25]
const LEVEL_LINES = [27, 63.3]
const LINES = [
  '0.6 w',
  ...UPRIGHT_LINES.map((x) => `${x} 9 m ${x} 108 l S`),
  ...LEVEL_LINES.map((y) => `9 ${y} m 171 ${y} l S`),
].join(' ')

const pixels = (pointsOfIt: number): number => (pointsOfIt / 72) * DRAWN_AT

/** A row and a column that cross no line of the other direction. */
const CLEAR = { row: pixels(PAPER[1] - 45), column: pixels(60) }

function drawn(name: string, rotate: 0 | 90): ScanKind {
  return pdfKind(name, () => {
    const [across, down] = PAPER
    const upright = UPRIGHT_LINES.map((x) => ({ axis: 'x' as const, at: pixels(x), along: CLEAR.row }))
    const level = LEVEL_LINES.map((y) => ({
      axis: 'y' as const,
      at: pixels(down - y),
      along: CLEAR.column,
    }))
    // Turned to the right, what was down lies across from the other side, and what was across lies down.
    const lines =
      rotate === 0
        ? [...upright, ...level]
        : [
            ...upright.map(({ at, along }) => ({ axis: 'y' as const, at, along: pixels(down) - along })),
            ...level.map(({ at, along }) => ({ axis: 'x' as const, at: pixels(down) - at, along })),
          ]
    const [wide, tall] = rotate === 0 ? [across, down] : [down, across]
    const size = { width: Math.round(pixels(wide)), height: Math.round(pixels(tall)) }
    return {
      bytes: pdfOf(new PdfFile(), [{ box: [0, 0, across, down], content: LINES, rotate }]),
      pages: [{ ...size, dpi: DRAWN_AT, made: 'drawn', lines }],
    }
  })
}

const mixed = pdfKind('a drawn page after a scanned one', () => {
  const file = new PdfFile()
  const size = { width: pixels(PAPER[0]), height: pixels(PAPER[1]) }
  return {
    bytes: pdfOf(file, [
      covered(grey, flatePicture(file, grey), 300),
      { box: [0, 0, ...PAPER], content: LINES },
    ]),
    pages: [scanned(grey, 300), { ...size, dpi: DRAWN_AT, made: 'drawn' }],
  }
})

export const PDF_PAGE_KINDS: readonly ScanKind[] = [
  banded,
  lettered,
  several,
  drawn('drawn lines', 0),
  drawn('drawn lines, page turned by 90', 90),
  mixed,
]
