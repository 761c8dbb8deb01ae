import sharp from 'sharp'
import {
  bitonalDrawing,
  colourDrawing,
  deepColourDrawing,
  deepGreyDrawing,
  greyDrawing,
  INKS,
  indexedDrawing,
  inkedDrawing,
  printedDrawing,
} from './drawing.ts'
import { inkProfile } from './icc/ink-profile.ts'
import { asGrey, type Picture } from './picture.ts'
import type { PageTruth, ScanKind } from './scan-kind.ts'
import { type TiffPage, tiffFile } from './tiff/tiff-file.ts'

const perInch = (x: number, y = x) => ({ x, y, unit: 'inch' as const })

const truthOf = (picture: Picture, more: Partial<PageTruth> = {}): PageTruth => ({
  width: picture.width,
  height: picture.height,
  made: 'scanned',
  picture,
  ...more,
})

/** A kind of one page, 300 dpi unless it says otherwise, whose samples are to come back as `seen`. */
function kind(name: string, page: TiffPage, seen: Picture, mark: 'II' | 'MM' = 'II'): ScanKind {
  const whole: TiffPage = { resolution: perInch(300), ...page }
  const called = `TIFF, ${name}, ${mark}`
  return {
    name: called,
    file: `${called.replaceAll(/[^\w]+/g, '-')}.tif`,
    format: 'tiff',
    make: () => ({ bytes: tiffFile([whole], mark), pages: [truthOf(seen, { dpi: 300 })] }),
  }
}

const grey = greyDrawing()
const colour = colourDrawing()
const bitonal = bitonalDrawing()
const deepGrey = deepGreyDrawing()
const deepColour = deepColourDrawing()
const indexed = indexedDrawing()
const printed = printedDrawing()
const STRIPS = { rows: 7 }
const TILES = { tile: [32, 16] as const }

const plain: ScanKind[] = (['II', 'MM'] as const).flatMap((mark) =>
  (['none', 'lzw', 'deflate', 'packbits'] as const).flatMap((compression) => [
    kind(
      `${compression}, grey, strips`,
      { picture: grey, photometric: 'black is zero', compression, ...STRIPS },
      grey,
      mark,
    ),
    kind(
      `${compression}, grey of 16 bits, tiles`,
      { picture: deepGrey, photometric: 'black is zero', compression, ...TILES },
      deepGrey,
      mark,
    ),
    kind(
      `${compression}, RGB, tiles`,
      { picture: colour, photometric: 'rgb', compression, ...TILES },
      colour,
      mark,
    ),
    kind(
      `${compression}, RGB of 16 bits, strips`,
      { picture: deepColour, photometric: 'rgb', compression, ...STRIPS },
      deepColour,
      mark,
    ),
    kind(
      `${compression}, 1 bit, strips`,
      { picture: bitonal, photometric: 'black is zero', compression, ...STRIPS },
      asGrey(bitonal),
      mark,
    ),
  ]),
)

const predicted: ScanKind[] = (['lzw', 'deflate'] as const).flatMap((compression) => [
  kind(
    `${compression} of differences, grey`,
    { picture: grey, photometric: 'black is zero', compression, predictor: true, ...STRIPS },
    grey,
  ),
  kind(
    `${compression} of differences, grey of 16 bits`,
    { picture: deepGrey, photometric: 'black is zero', compression, predictor: true, ...STRIPS },
    deepGrey,
    'MM',
  ),
  kind(
    `${compression} of differences, RGB`,
    { picture: colour, photometric: 'rgb', compression, predictor: true, ...TILES },
    colour,
  ),
])

const fax: ScanKind[] = (['modified huffman', 'group 3', 'group 3, 2-D', 'group 4'] as const).flatMap(
  (compression) => [
    kind(
      `${compression}, strips`,
      { picture: bitonal, photometric: 'white is zero', compression, ...STRIPS },
      asGrey(bitonal),
    ),
    kind(
      `${compression}, one strip`,
      { picture: bitonal, photometric: 'white is zero', compression },
      asGrey(bitonal),
      'MM',
    ),
  ],
)

const inverted = (picture: Picture): Picture => ({
  ...picture,
  values: picture.values.map((value) => 255 - value),
})

const senses: ScanKind[] = [
  kind('grey, white is zero', { picture: grey, photometric: 'white is zero' }, inverted(grey)),
  kind(
    '1 bit, white is zero',
    { picture: bitonal, photometric: 'white is zero', compression: 'packbits' },
    inverted(asGrey(bitonal)),
  ),
  kind(
    'group 4, tiles',
    { picture: bitonal, photometric: 'white is zero', compression: 'group 4', ...TILES },
    asGrey(bitonal),
  ),
  kind(
    'group 4, black is zero',
    { picture: bitonal, photometric: 'black is zero', compression: 'group 4' },
    inverted(asGrey(bitonal)),
  ),
  kind(
    'palette',
    { picture: indexed, photometric: 'palette', compression: 'lzw', colours: INKS, ...STRIPS },
    inkedDrawing(indexed),
  ),
  kind('RGB, planes apart', { picture: colour, photometric: 'rgb', planar: true, ...STRIPS }, colour),
  kind('CMYK', { picture: printed, photometric: 'inks', compression: 'lzw', ...STRIPS }, printed),
  {
    name: 'TIFF, CMYK with a profile',
    file: 'inks with profile.tif',
    format: 'tiff',
    make: () => {
      const page: TiffPage = {
        picture: printed,
        photometric: 'inks',
        icc: inkProfile(),
        resolution: perInch(300),
      }
      return { bytes: tiffFile([page]), pages: [truthOf(printed, { dpi: 300 })] }
    },
  },
]

const resolutions: ScanKind[] = [
  {
    name: 'TIFF without a resolution',
    file: 'no resolution.tif',
    format: 'tiff',
    make: () => ({
      bytes: tiffFile([{ picture: grey, photometric: 'black is zero' }]),
      pages: [truthOf(grey)],
    }),
  },
  {
    name: 'TIFF with a resolution per centimetre',
    file: 'centimetres.tif',
    format: 'tiff',
    make: () => ({
      bytes: tiffFile([
        { picture: grey, photometric: 'black is zero', resolution: { x: 157.48, y: 157.48, unit: 'cm' } },
      ]),
      pages: [truthOf(grey, { dpi: 400 })],
    }),
  },
  {
    name: 'TIFF that asks to be shown turned',
    file: 'turned.tif',
    format: 'tiff',
    make: () => ({
      bytes: tiffFile([
        { picture: grey, photometric: 'black is zero', resolution: perInch(300), orientation: 6 },
      ]),
      pages: [truthOf(grey, { dpi: 300, orientation: 6 })],
    }),
  },
]

/** The geometric mean of both resolutions stands for a sheet whose pixels are not square. */
const faxed: ScanKind = {
  name: 'TIFF of a telefax, coarse down the page',
  file: 'telefax.tif',
  format: 'tiff',
  make: () => {
    const resolution = perInch(204, 98)
    const bytes = tiffFile([
      { picture: bitonal, photometric: 'white is zero', compression: 'group 3', resolution },
    ])
    return { bytes, pages: [truthOf(asGrey(bitonal), { dpi: Math.sqrt(204 * 98) })] }
  },
}

const large: ScanKind = {
  name: 'TIFF with places of eight bytes, by sharp',
  file: 'BigTIFF.tif',
  format: 'tiff',
  make: async () => {
    const { width, height } = colour
    const raw = sharp(Buffer.from(colour.values), { raw: { width, height, channels: 3 } })
    const bytes = await raw.tiff({ bigtiff: true, compression: 'lzw', xres: 11.811, yres: 11.811 }).toBuffer()
    return { bytes, pages: [truthOf(colour, { dpi: 300 })] }
  },
}

const second = bitonalDrawing({ width: 61, height: 83 })
const third = colourDrawing({ width: 113, height: 41 })

const severalPages: ScanKind[] = (['II', 'MM'] as const).map((mark) => ({
  name: `TIFF of three pages unlike each other, ${mark}`,
  file: `three pages ${mark}.tif`,
  format: 'tiff',
  make: () => ({
    bytes: tiffFile(
      [
        {
          picture: grey,
          photometric: 'black is zero',
          compression: 'lzw',
          resolution: perInch(300),
          ...STRIPS,
        },
        { picture: second, photometric: 'white is zero', compression: 'group 4', resolution: perInch(600) },
        {
          picture: third,
          photometric: 'rgb',
          compression: 'deflate',
          resolution: perInch(200),
          orientation: 3,
          ...TILES,
        },
      ],
      mark,
    ),
    pages: [
      truthOf(grey, { dpi: 300 }),
      truthOf(asGrey(second), { dpi: 600 }),
      truthOf(third, { dpi: 200, orientation: 3 }),
    ],
  }),
}))

export const TIFF_KINDS: readonly ScanKind[] = [
  ...plain,
  ...predicted,
  ...fax,
  ...senses,
  ...resolutions,
  faxed,
  large,
  ...severalPages,
]
