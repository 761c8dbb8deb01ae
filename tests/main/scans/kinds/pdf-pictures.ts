import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Picture } from './picture.ts'

const root = dirname(createRequire(import.meta.url).resolve('pdfjs-dist/package.json'))
const folder = (name: string): string => `${pathToFileURL(join(root, name)).href}/`

/** Samples per pixel by the way that pdf.js keeps a decoded picture. */
const BITS = 1
const COLOURS = 2

interface Decoded {
  width: number
  height: number
  kind: number
  data: Uint8Array | Uint8ClampedArray
}

/** What pdf.js says of a page, before it is drawn. */
export interface PdfPageFacts {
  /** Points, as shown. */
  width: number
  height: number
  rotate: number
  pictures: Picture[]
}

const asPicture = ({ width, height, kind, data }: Decoded): Picture => {
  if (kind === BITS) {
    const perRow = Math.ceil(width / 8)
    const values = Uint16Array.from({ length: width * height }, (_, i) => {
      const x = i % width
      return ((data[Math.floor(i / width) * perRow + (x >> 3)] ?? 0) >> (7 - (x & 7))) & 1 ? 255 : 0
    })
    return { width, height, samples: 1, bits: 8, values }
  }
  const stride = kind === COLOURS ? 3 : 4
  const values = Uint16Array.from({ length: width * height * 3 }, (_, i) => {
    return data[Math.floor(i / 3) * stride + (i % 3)] ?? 0
  })
  return { width, height, samples: 3, bits: 8, values }
}

const openPdf = async (bytes: Buffer, password?: string) => {
  const pdfjs = await import('pdfjs-dist/legacy/build/pdf.mjs')
  const task = pdfjs.getDocument({
    data: Uint8Array.from(bytes),
    wasmUrl: folder('wasm'),
    standardFontDataUrl: folder('standard_fonts'),
    isEvalSupported: false,
    verbosity: 0,
    ...(password === undefined ? {} : { password }),
  })
  return { OPS: pdfjs.OPS, task }
}

/** Draws the first page of a PDF file by pdf.js, over white. */
export async function drawnByPdfJs(bytes: Buffer, dpi: number): Promise<Picture> {
  const { createCanvas } = await import('@napi-rs/canvas')
  const { task } = await openPdf(bytes)
  try {
    const page = await (await task.promise).getPage(1)
    const viewport = page.getViewport({ scale: dpi / 72 })
    const canvas = createCanvas(Math.round(viewport.width), Math.round(viewport.height))
    // pdf.js is typed for a browser's canvas.
    await page.render({ canvas: canvas as unknown as never, viewport }).promise
    const { width, height, data } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height)
    return asPicture({ width, height, kind: 3, data })
  } finally {
    await task.destroy()
  }
}

/** Opens a PDF file by pdf.js and decodes the pictures of its pages. */
export async function pdfPictures(bytes: Buffer, password?: string): Promise<PdfPageFacts[]> {
  const { OPS, task } = await openPdf(bytes, password)
  try {
    const document = await task.promise
    const facts: PdfPageFacts[] = []
    for (let number = 1; number <= document.numPages; number++) {
      const page = await document.getPage(number)
      const { fnArray, argsArray } = await page.getOperatorList()
      const { width, height } = page.getViewport({ scale: 1 })
      const pictures: Picture[] = []
      for (const [i, operator] of fnArray.entries()) {
        if (operator !== OPS.paintImageXObject) continue
        const name: string = argsArray[i][0]
        const objects = name.startsWith('g_') ? page.commonObjs : page.objs
        const decoded = await new Promise<Decoded>((resolve) => {
          objects.get(name, resolve)
        })
        pictures.push(asPicture(decoded))
      }
      facts.push({ width, height, rotate: page.rotate, pictures })
    }
    return facts
  } finally {
    await task.destroy()
  }
}
