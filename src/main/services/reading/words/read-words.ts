import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import type { GreyWindow } from '../../../../core/imaging/index.ts'
import type { SeenWord } from '../../../../core/reading/labels/seen-word.ts'

const DATA = '@tesseract.js-data/eng'
/** Of the package's sets of weights the best that is in whole numbers. */
const WEIGHTS = '4.0.0_best_int'

/** Pixels to the inch, near enough. */
const FINE = '300'

/**
 * The words in a part of a page. Weights and program come from the packages that are installed: nothing is fetched.
 * @param side pixels of the page to one of the picture
 * @returns boxes in pixels of the page
 */
export async function readWords(picture: GreyWindow, side: number): Promise<SeenWord[]> {
  const [{ default: sharp }, { default: tesseract }] = await Promise.all([
    import('sharp'),
    import('tesseract.js'),
  ])
  const { left, top, width, height, data } = picture
  const raw = { width, height, channels: 1 } as const
  const png = await sharp(data, { raw }).toColourspace('b-w').png({ compressionLevel: 1 }).toBuffer()
  const langPath = join(dirname(createRequire(import.meta.url).resolve(`${DATA}/package.json`)), WEIGHTS)
  const worker = await tesseract.createWorker('eng', tesseract.OEM.LSTM_ONLY, {
    langPath,
    gzip: true,
    cacheMethod: 'none',
  })
  try {
    await worker.setParameters({
      // Words wherever they are: a drawing has no paragraphs.
      tessedit_pageseg_mode: tesseract.PSM.SPARSE_TEXT,
      // Left to guess how fine the picture is, it passes over whole cells of a title block.
      user_defined_dpi: FINE,
    })
    const { blocks } = (await worker.recognize(png, {}, { blocks: true, text: false })).data
    const lines = (blocks ?? []).flatMap((block) => block.paragraphs.flatMap((one) => one.lines))
    return lines.flatMap(({ words }) =>
      words.map(({ text, confidence, bbox: { x0, y0, x1, y1 } }) => ({
        text,
        probability: Math.min(1, Math.max(0, confidence / 100)),
        box: [side * (left + x0), side * (top + y0), side * (x1 - x0), side * (y1 - y0)] as const,
      })),
    )
  } finally {
    await worker.terminate()
  }
}
