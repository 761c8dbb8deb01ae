import { bitonalDrawing, colourDrawing, greyDrawing, INKS, indexedDrawing, inkedDrawing } from './drawing.ts'
import { jpegFile } from './jpeg/jpeg-file.ts'
import { PdfFile, pdfOf, real, reference } from './pdf/pdf-file.ts'
import {
  dctPicture,
  faxPicture,
  faxStencil,
  flatePicture,
  indexedPicture,
  jbig2Picture,
  jpxPicture,
} from './pdf/pdf-picture.ts'
import { asGrey, mirrored, type Picture, turned } from './picture.ts'
import { readPicture } from './read-picture.ts'
import type { PageTruth, ScanKind } from './scan-kind.ts'

const DPI = 300

/** Points that so many pixels take. */
export const points = (pixels: number, dpi = DPI): number => (pixels * 72) / dpi

/** Puts a picture into a file, as archives' scanners do. */
type Filter = (file: PdfFile, picture: Picture) => number | Promise<number>

interface Placed {
  picture: Picture
  put: Filter
  /** Samples that are to come back, before the page turns them. */
  seen?: Picture
  rotate?: 0 | 90 | 180 | 270
  within?: number
}

/** A page that a picture covers, its own way up. */
const upright = ({ width, height }: Picture): string =>
  `q ${real(points(width))} 0 0 ${real(points(height))} 0 0 cm /Scan Do Q`

async function coveredPage({ picture, put, seen = picture, rotate, within }: Placed): Promise<{
  bytes: Buffer
  pages: PageTruth[]
}> {
  const file = new PdfFile()
  const number = await put(file, picture)
  const shown = turned(asGrey(seen), (rotate ?? 0) / 90)
  const bytes = pdfOf(file, [
    {
      box: [0, 0, points(picture.width), points(picture.height)],
      content: upright(picture),
      resources: `/XObject << /Scan ${reference(number)} >>`,
      ...(rotate === undefined ? {} : { rotate }),
    },
  ])
  return {
    bytes,
    pages: [
      {
        width: shown.width,
        height: shown.height,
        dpi: DPI,
        made: 'scanned',
        picture: shown,
        ...(within === undefined ? {} : { within }),
      },
    ],
  }
}

export const pdfKind = (name: string, make: ScanKind['make'], password?: string): ScanKind => ({
  name: `PDF, ${name}`,
  file: `${name}.pdf`,
  format: 'pdf',
  make,
  ...(password === undefined ? {} : { password }),
})

const grey = greyDrawing()
const colour = colourDrawing()
const bitonal = bitonalDrawing()
const indexed = indexedDrawing()

const filters: ScanKind[] = [
  pdfKind('grey, Flate', () => coveredPage({ picture: grey, put: flatePicture })),
  pdfKind('RGB, Flate', () => coveredPage({ picture: colour, put: flatePicture })),
  pdfKind('1 bit, Flate', () => coveredPage({ picture: bitonal, put: flatePicture })),
  pdfKind('grey, not compressed', () =>
    coveredPage({ picture: grey, put: (file, picture) => flatePicture(file, picture, false) }),
  ),
  pdfKind('palette', () =>
    coveredPage({
      picture: indexed,
      put: (file, picture) => indexedPicture(file, picture, INKS),
      seen: inkedDrawing(indexed),
    }),
  ),
  pdfKind('Group 4', () => coveredPage({ picture: bitonal, put: faxPicture })),
  pdfKind('Group 3', () =>
    coveredPage({ picture: bitonal, put: (file, picture) => faxPicture(file, picture, 3) }),
  ),
  pdfKind('Group 4 stencil', () => coveredPage({ picture: bitonal, put: faxStencil })),
  pdfKind('JBIG2', () => coveredPage({ picture: bitonal, put: jbig2Picture })),
  pdfKind('JPEG 2000, grey', () => coveredPage({ picture: grey, put: jpxPicture })),
  pdfKind('JPEG 2000, RGB', () => coveredPage({ picture: colour, put: jpxPicture })),
]

/** A page of one JPEG picture; its samples are what sharp decodes of that picture. */
const dct = (name: string, picture: Picture, halved = false, progressive = false, rotate?: 90): ScanKind =>
  pdfKind(name, async () => {
    const jpeg = await jpegFile(picture, { halved, progressive })
    const put: Filter = (file) => dctPicture(file, picture, jpeg)
    const seen = await readPicture(jpeg)
    return coveredPage({ picture, put, seen, ...(rotate === undefined ? {} : { rotate }) })
  })

const jpegs: ScanKind[] = [
  dct('JPEG, grey', grey),
  dct('JPEG, colours', colour),
  dct('JPEG, halved colours', colour, true),
  dct('JPEG, progressive grey', grey, false, true),
  dct('JPEG, grey, page turned by 90', grey, false, false, 90),
  dct('JPEG, halved colours, page turned by 90', colour, true, false, 90),
]

const turns: ScanKind[] = ([0, 90, 180, 270] as const).flatMap((rotate) => [
  pdfKind(`grey, page turned by ${rotate}`, () => coveredPage({ picture: grey, put: flatePicture, rotate })),
  pdfKind(`Group 4, page turned by ${rotate}`, () =>
    coveredPage({ picture: bitonal, put: faxPicture, rotate }),
  ),
])

const turnedFilters: ScanKind[] = [
  pdfKind('JBIG2, page turned by 270', () =>
    coveredPage({ picture: bitonal, put: jbig2Picture, rotate: 270 }),
  ),
  pdfKind('JPEG 2000, page turned by 90', () =>
    coveredPage({ picture: colour, put: jpxPicture, rotate: 90 }),
  ),
  pdfKind('Group 4 stencil, page turned by 90', () =>
    coveredPage({ picture: bitonal, put: faxStencil, rotate: 90 }),
  ),
]

/** A page that a picture is laid on by a matrix or through forms. */
function laid(
  name: string,
  shown: Picture,
  content: string,
  form?: (scan: string) => { entries: string; content: string },
  corner: readonly [number, number] = [0, 0],
): ScanKind {
  return pdfKind(name, () => {
    const file = new PdfFile()
    let resources = `/XObject << /Scan ${reference(flatePicture(file, grey))} >>`
    if (form !== undefined) {
      const { entries, content: inner } = form(resources)
      const number = file.stream(
        `/Type /XObject /Subtype /Form /Resources << ${resources} >> ${entries}`,
        inner,
      )
      resources = `/XObject << /Form ${reference(number)} >>`
    }
    const [left, bottom] = corner
    const box = [left, bottom, left + points(shown.width), bottom + points(shown.height)] as const
    return {
      bytes: pdfOf(file, [{ box, content, resources }]),
      pages: [{ width: shown.width, height: shown.height, dpi: DPI, made: 'scanned', picture: shown }],
    }
  })
}

const W = real(points(grey.width))
const H = real(points(grey.height))

const placings: ScanKind[] = [
  laid('matrix that turns to the left', turned(grey, 3), `q 0 ${W} -${H} 0 ${H} 0 cm /Scan Do Q`),
  laid('matrix that turns to the right', turned(grey, 1), `q 0 -${W} ${H} 0 0 ${W} cm /Scan Do Q`),
  laid('matrix that turns upside down', turned(grey, 2), `q -${W} 0 0 -${H} ${W} ${H} cm /Scan Do Q`),
  laid('matrix that mirrors', mirrored(grey), `q -${W} 0 0 ${H} ${W} 0 cm /Scan Do Q`),
  laid('two matrices', grey, `q 0.24 0 0 0.24 0 0 cm q 97 0 0 61 0 0 cm /Scan Do Q Q`),
  laid('form with a matrix', grey, 'q 0.12 0 0 0.12 0 0 cm /Form Do Q', () => ({
    entries: '/BBox [0 0 97 61] /Matrix [2 0 0 2 0 0]',
    content: 'q 97 0 0 61 0 0 cm /Scan Do Q',
  })),
  laid('paper away from the origin', grey, `q ${W} 0 0 ${H} 100 -50 cm /Scan Do Q`, undefined, [100, -50]),
]

export const PDF_SCANNED_KINDS: readonly ScanKind[] = [
  ...filters,
  ...jpegs,
  ...turns,
  ...turnedFilters,
  ...placings,
]
