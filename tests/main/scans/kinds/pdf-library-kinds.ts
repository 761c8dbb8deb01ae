import { degrees, PDFDocument } from 'pdf-lib'
import { colourDrawing, greyDrawing } from './drawing.ts'
import { jpegFile } from './jpeg/jpeg-file.ts'
import { pdfKind, points } from './pdf-scanned-kinds.ts'
import { turned } from './picture.ts'
import { pngFile } from './png/png-file.ts'
import { readPicture } from './read-picture.ts'
import type { PageTruth, ScanKind } from './scan-kind.ts'

const colour = colourDrawing()
const grey = greyDrawing()

/** Objects packed into streams, and a table of places that is a stream itself. Source: ISO 32000-1, 7.5.7 and 7.5.8. */
const packed = pdfKind('objects in streams, by pdf-lib', async () => {
  const file = await PDFDocument.create()
  const jpeg = await jpegFile(grey)
  const [flate, dct] = [await file.embedPng(pngFile(colour)), await file.embedJpg(jpeg)]
  for (const [i, picture] of [flate, dct].entries()) {
    const size = { width: points(picture.width), height: points(picture.height) }
    const page = file.addPage([size.width, size.height])
    page.drawImage(picture, { x: 0, y: 0, ...size })
    if (i === 1) page.setRotation(degrees(90))
  }
  const onEnd = turned(await readPicture(jpeg), 1)
  const says = { dpi: 300, made: 'scanned' as const }
  const pages: PageTruth[] = [
    { width: colour.width, height: colour.height, picture: colour, ...says },
    { width: onEnd.width, height: onEnd.height, picture: onEnd, ...says },
  ]
  return { bytes: Buffer.from(await file.save()), pages }
})

export const PDF_LIBRARY_KINDS: readonly ScanKind[] = [packed]
