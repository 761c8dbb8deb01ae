import { describe, expect, test } from 'vitest'
import { PDF_KINDS, PICTURE_KINDS } from './all-kinds.ts'
import { bitonalDrawing } from './drawing.ts'
import { middleOfInk } from './ink-along.ts'
import { ArithmeticCoder } from './jbig2/arithmetic-coder.ts'
import { drawnByPdfJs, pdfPictures } from './pdf-pictures.ts'
import { asGrey } from './picture.ts'
import { readPicture } from './read-picture.ts'
import { type Compression, tiffFile } from './tiff/tiff-file.ts'

describe('the makers of files', () => {
  test('code decisions as the standard has them coded', () => {
    // ITU-T T.88, annex H.2: the test sequence for the arithmetic coder, and what it is coded to.
    const given = '00020051000000C00352872AAAAAAAAA82C02000FCD79EF6BF7FED904F46A3BF'
    const coder = new ArithmeticCoder()
    for (const byte of Buffer.from(given, 'hex')) {
      for (let bit = 7; bit >= 0; bit--) coder.decide(0, (byte >> bit) & 1)
    }
    expect(coder.bytes().toString('hex').toUpperCase()).toBe(
      '84C73BFCE1A1430402200000410DBB86F4317FFF88FF37471ADB6ADFFFAC',
    )
  })

  test.each<Compression>(['modified huffman', 'group 3', 'group 3, 2-D', 'group 4'])(
    'code runs of every length by %s: libtiff reads a sheet of 5300 pixels across',
    async (compression) => {
      const wide = bitonalDrawing({ width: 5300, height: 23 })
      const bytes = tiffFile([{ picture: wide, photometric: 'white is zero', compression }])
      expect((await readPicture(bytes)).values).toEqual(asGrey(wide).values)
    },
  )

  test.each(PICTURE_KINDS)('make what libvips reads, pixel for pixel: $name', async ({ make }) => {
    const { bytes, pages } = await make()
    for (const [i, { picture }] of pages.entries()) expect(await readPicture(bytes, i + 1)).toEqual(picture)
  })
})

describe('the makers of PDF files', () => {
  test.each(PDF_KINDS)(
    'make what pdf.js opens, pages of the right size: $name',
    async ({ make, password }) => {
      const { bytes, pages } = await make()
      const opened = await pdfPictures(bytes, password)
      const sizes = opened.map(({ width, height }, i) => {
        const perPoint = (pages[i]?.dpi ?? Number.NaN) / 72
        return { width: Math.round(width * perPoint), height: Math.round(height * perPoint) }
      })
      expect(sizes).toEqual(pages.map(({ width, height }) => ({ width, height })))
    },
  )

  // Those of JPEG are left to the decoder that sharp has; a stencil is no picture to pdf.js.
  const upright = PDF_KINDS.filter(({ name }) => !name.includes('turned by'))
  const exact = upright.filter(({ name }) => /Flate|compressed|palette|Group \d$|JBIG2|JPEG 2000/.test(name))
  test.each(exact)('make what pdf.js decodes, pixel for pixel: $name', async ({ make }) => {
    const { bytes, pages } = await make()
    const [page] = await pdfPictures(bytes)
    const seen = page?.pictures[0]
    const made = pages[0]?.picture
    if (seen === undefined || made === undefined) throw new Error('there is no picture')
    const bands = seen.samples / made.samples
    expect(seen.values.filter((_, i) => i % bands === 0)).toEqual(made.values)
  })

  const ruled = PDF_KINDS.filter(({ name }) => name.includes('drawn lines'))
  test.each(ruled)(
    'draw lines that pdf.js draws within a tenth of a pixel of their places: $name',
    async (kind) => {
      const { bytes, pages } = await kind.make()
      const { dpi = Number.NaN, lines = [] } = pages[0] ?? {}
      const drawn = await drawnByPdfJs(bytes, dpi)
      expect(lines).toHaveLength(5)
      for (const { axis, at, along } of lines) {
        expect(Math.abs(middleOfInk(drawn, axis, at, along) - at)).toBeLessThan(0.1)
      }
    },
  )
})
