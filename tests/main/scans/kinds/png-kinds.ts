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
} from './drawing.ts'
import { asGrey, type Picture, picture } from './picture.ts'
import { type PngOptions, pngFile } from './png/png-file.ts'
import type { PageTruth, ScanKind } from './scan-kind.ts'

/** 300 dpi in pixels per metre. */
const PER_METRE = [11811, 11811] as const

const truthOf = ({ width, height, ...rest }: Picture, dpi?: number): PageTruth => ({
  width,
  height,
  made: 'scanned',
  picture: { width, height, ...rest },
  ...(dpi === undefined ? {} : { dpi }),
})

function kind(name: string, stored: Picture, seen: Picture = stored, options: PngOptions = {}): ScanKind {
  const perMetre = options.perMetre ?? PER_METRE
  return {
    name: `PNG, ${name}`,
    file: `${name}.png`,
    format: 'png',
    make: () => ({
      bytes: pngFile(stored, { ...options, perMetre }),
      pages: [truthOf(seen, Math.round(perMetre[0] * 0.0254))],
    }),
  }
}

const grey = greyDrawing()
const colour = colourDrawing()
const indexed = indexedDrawing()

/** Grey that shows paper through towards one side. */
const seenThrough: Picture = picture({ ...grey, samples: 2 }, (x, y) => [
  grey.values[y * grey.width + x] ?? 0,
  x > 80 ? 128 : 255,
])

const interlaced = (name: string, given: Picture): ScanKind => ({
  name: `PNG, interlaced, ${name}`,
  file: `interlaced ${name}.png`,
  format: 'png',
  make: async () => {
    const { width, height, samples } = given
    const raw = sharp(Buffer.from(given.values), { raw: { width, height, channels: samples } })
    const space = samples === 1 ? 'b-w' : 'srgb'
    const bytes = await raw.toColourspace(space).withDensity(300).png({ progressive: true }).toBuffer()
    return { bytes, pages: [truthOf(given, 300)] }
  },
})

export const PNG_KINDS: readonly ScanKind[] = [
  kind('1 bit', bitonalDrawing(), asGrey(bitonalDrawing())),
  kind('grey', grey),
  kind('grey of 16 bits', deepGreyDrawing()),
  kind('RGB', colour),
  kind('RGB of 16 bits', deepColourDrawing()),
  kind('palette', indexed, inkedDrawing(indexed), { colours: INKS }),
  kind('grey with transparency', seenThrough, grey),
  kind('600 dpi', grey, grey, { perMetre: [23622, 23622] }),
  interlaced('grey', grey),
  interlaced('RGB', colour),
  {
    name: 'PNG without a resolution',
    file: 'no resolution.png',
    format: 'png',
    make: () => ({ bytes: pngFile(grey), pages: [truthOf(grey)] }),
  },
]
