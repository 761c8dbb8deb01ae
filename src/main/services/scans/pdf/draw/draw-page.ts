import { rm } from 'node:fs/promises'
import { join } from 'node:path'
import type { PDFPageProxy } from 'pdfjs-dist'
import type { RenderParameters } from 'pdfjs-dist/types/src/display/api.js'
import { pdfLibrary } from '../file/pdf-library.ts'
import { StripFile } from './strip-file.ts'

const POINTS_PER_INCH = 72
const PAPER = '#ffffff'

/** What is drawn at once, pixels: 128 MB of memory. A page is gone through once for each. */
const BLOCK = { width: 8192, height: 4096 }

export interface Drawing {
  /** Dots per inch. */
  dpi: number
  /** Pixels of the page. */
  width: number
  height: number
}

interface Block {
  left: number
  top: number
  width: number
  height: number
}

/**
 * Draws a page on white paper into a file, a block at a time: grey where all of it is, else colours.
 * @returns the path of the file
 */
export async function drawPage(page: PDFPageProxy, drawing: Drawing, folder: string): Promise<string> {
  const { width, height } = drawing
  const path = join(folder, 'drawn.tif')
  const colours = await StripFile.create(path, { width, height, samples: 3, bits: 8 })
  try {
    let grey = true
    for (let top = 0; top < height; top += BLOCK.height) {
      const rows = Math.min(BLOCK.height, height - top)
      const band = new Uint8Array(width * rows * 3)
      for (let left = 0; left < width; left += BLOCK.width) {
        const block = { left, top, width: Math.min(BLOCK.width, width - left), height: rows }
        grey = put(band, width, block, await drawBlock(page, drawing, block)) && grey
      }
      await colours.append(band)
    }
    await colours.finish()
    if (!grey) return path
    const target = join(folder, 'page.tif')
    await writeGrey(target, drawing, colours)
    await rm(path)
    return target
  } finally {
    await colours.close()
  }
}

async function writeGrey(path: string, { width, height }: Drawing, colours: StripFile): Promise<void> {
  const file = await StripFile.create(path, { width, height, samples: 1, bits: 8 })
  try {
    for await (const strip of colours.strips()) await file.append(strip.filter((_, i) => i % 3 === 0))
    await file.finish()
  } finally {
    await file.close()
  }
}

/** Part of a page: red, green, blue and 255, row by row. */
async function drawBlock(page: PDFPageProxy, { dpi }: Drawing, block: Block): Promise<Uint8ClampedArray> {
  const { createCanvas } = await import('@napi-rs/canvas')
  const { AnnotationMode } = await pdfLibrary()
  const { left, top, width, height } = block
  const canvas = createCanvas(width, height)
  const context = canvas.getContext('2d')
  context.fillStyle = PAPER
  context.fillRect(0, 0, width, height)
  await page.render({
    canvas: null,
    // The library's types know browsers' canvases only.
    canvasContext: context as unknown as RenderParameters['canvasContext'] & object,
    viewport: page.getViewport({ scale: dpi / POINTS_PER_INCH }),
    transform: [1, 0, 0, 1, -left, -top],
    background: PAPER,
    intent: 'print',
    annotationMode: AnnotationMode.DISABLE,
  }).promise
  return context.getImageData(0, 0, width, height).data
}

/** Puts a block among the pixels of its band. @returns whether all of it is grey */
function put(band: Uint8Array, width: number, block: Block, pixels: Uint8ClampedArray): boolean {
  let grey = true
  for (let y = 0, from = 0; y < block.height; y++) {
    for (let x = 0, to = (y * width + block.left) * 3; x < block.width; x++, from += 4, to += 3) {
      const red = pixels[from] ?? 0
      const green = pixels[from + 1] ?? 0
      const blue = pixels[from + 2] ?? 0
      if (red !== green || red !== blue) grey = false
      band[to] = red
      band[to + 1] = green
      band[to + 2] = blue
    }
  }
  return grey
}

/** A small picture of a page, JPEG. @param side its longer side, pixels */
export async function drawSmall(page: PDFPageProxy, side: number): Promise<Uint8Array> {
  const { createCanvas } = await import('@napi-rs/canvas')
  const paper = page.getViewport({ scale: 1 })
  const scale = side / Math.max(paper.width, paper.height)
  const width = Math.max(1, Math.round(paper.width * scale))
  const height = Math.max(1, Math.round(paper.height * scale))
  const dpi = scale * POINTS_PER_INCH
  const pixels = await drawBlock(page, { dpi, width, height }, { left: 0, top: 0, width, height })
  const canvas = createCanvas(width, height)
  const context = canvas.getContext('2d')
  const image = context.createImageData(width, height)
  image.data.set(pixels)
  context.putImageData(image, 0, 0)
  return canvas.encode('jpeg', 80)
}
