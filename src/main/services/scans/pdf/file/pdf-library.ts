import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'

export type PdfLibrary = typeof import('pdfjs-dist/legacy/build/pdf.mjs')

let loaded: Promise<PdfLibrary> | undefined

/**
 * Before it decodes JPEG 2000 the library tries how large a canvas may be, and halves the picture where it can't try:
 * here nothing is drawn on such a canvas, and any size is good.
 */
class AnySize {
  getContext(): object {
    return { fillRect: () => undefined, getImageData: () => ({ data: [0, 0, 0, 255] }) }
  }
}

/** The library that reads PDF. It runs in this process, without a thread of its own. */
export function pdfLibrary(): Promise<PdfLibrary> {
  loaded ??= (async () => {
    Object.assign(globalThis, { OffscreenCanvas: AnySize })
    return import('pdfjs-dist/legacy/build/pdf.mjs')
  })()
  return loaded
}

/** The folder of the library, with what it needs to decode pictures and lettering; its paths end with a slash. */
function libraryFolder(name: string): string {
  const root = dirname(createRequire(import.meta.url).resolve('pdfjs-dist/package.json'))
  return `${join(root, name)}/`
}

/** As many bytes of a picture as the library counts with. */
const ANY_AREA = 2 ** 31 - 1

/**
 * How files are opened: no scripts, no compiled code, nothing fetched, no fonts of this machine, so that a page looks
 * the same on every one.
 */
export const safely = () => ({
  verbosity: 0,
  isEvalSupported: false,
  enableXfa: false,
  useSystemFonts: false,
  disableFontFace: true,
  isOffscreenCanvasSupported: false,
  isImageDecoderSupported: false,
  canvasMaxAreaInBytes: ANY_AREA,
  wasmUrl: libraryFolder('wasm'),
  cMapUrl: libraryFolder('cmaps'),
  standardFontDataUrl: libraryFolder('standard_fonts'),
})
