import PDFDocument from 'pdfkit'
import { greyDrawing } from './drawing.ts'
import { pdfKind, points } from './pdf-scanned-kinds.ts'
import type { Picture } from './picture.ts'
import { pngFile } from './png/png-file.ts'
import type { ScanKind } from './scan-kind.ts'

export const PASSWORD = 'Valve gear 7'

/** How each version of the format locks. Source: ISO 32000-1, 7.6; its supplement by Adobe, extension level 3. */
const WAYS = [
  ['RC4 of 40 bits', '1.3'],
  ['RC4 of 128 bits', '1.4'],
  ['AES of 128 bits', '1.6'],
  ['AES of 256 bits', '1.7ext3'],
] as const

/** A page that a picture covers, locked. */
export function lockedPage(picture: Picture, pdfVersion: (typeof WAYS)[number][1]): Promise<Buffer> {
  const size = { width: points(picture.width), height: points(picture.height) }
  const file = new PDFDocument({
    size: [size.width, size.height],
    margin: 0,
    pdfVersion,
    userPassword: PASSWORD,
    info: { CreationDate: new Date(0) },
  })
  const chunks: Buffer[] = []
  return new Promise((resolve) => {
    file.on('data', (chunk) => chunks.push(chunk))
    file.on('end', () => resolve(Buffer.concat(chunks)))
    file.image(pngFile(picture), 0, 0, size)
    file.end()
  })
}

const grey = greyDrawing()
const { width, height } = grey

export const PDF_LOCKED_KINDS: readonly ScanKind[] = WAYS.map(([way, version]) =>
  pdfKind(
    `locked by ${way}`,
    async () => ({
      bytes: await lockedPage(grey, version),
      pages: [{ width, height, dpi: 300, made: 'scanned', picture: grey }],
    }),
    PASSWORD,
  ),
)
