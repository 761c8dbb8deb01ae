import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import sharp from 'sharp'
import { createWorker, OEM, PSM } from 'tesseract.js'
import type { LengthUnit } from '../../../../src/core/quantity/length.ts'
import { type DrawnFigure, standard } from '../drawn/draw-figure.ts'
import { uprightCrop } from '../drawn/upright-crop.ts'
import type { Reader } from './score-reader.ts'

/** Height of a full digit that its model is at home with, pixels: common practice, no source. */
const AT_HOME = 34

/** The same signs as a keyboard has them. */
const plain = (read: string): string =>
  read
    .replace(/[‘’′`]/g, "'")
    .replace(/[“”″]/g, '"')
    .replace(/[—–−]/g, '-')
    .replace(/\s+/g, ' ')
    .trim()

function figureOf(read: string, unit: LengthUnit): string | null {
  try {
    return standard(plain(read), unit)
  } catch {
    return null
  }
}

async function asPng({ grey, frame, height }: DrawnFigure): Promise<Buffer> {
  const { pixels, ...size } = uprightCrop(grey, frame, 0.4 * height, AT_HOME / height)
  return sharp(pixels, { raw: { ...size, channels: 1 } })
    .png()
    .toBuffer()
}

/**
 * Tesseract alone, by its English model, on the figure turned level by its true frame: as one line (page segmentation 7), a
 * call-out in two lines as one block (6). What it reads must parse as a figure as it stands.
 */
export async function tesseractReader(): Promise<{ read: Reader; end(): Promise<void> }> {
  const model = createRequire(import.meta.url).resolve('@tesseract.js-data/eng/package.json')
  const worker = await createWorker('eng', OEM.LSTM_ONLY, {
    langPath: join(dirname(model), '4.0.0_best_int'),
    cacheMethod: 'none',
    gzip: true,
  })
  await worker.setParameters({ user_defined_dpi: '300' })
  let mode: PSM | undefined
  const recognise = async (picture: DrawnFigure) => {
    const wanted = picture.lines > 1 ? PSM.SINGLE_BLOCK : PSM.SINGLE_LINE
    if (mode !== wanted) await worker.setParameters({ tessedit_pageseg_mode: wanted })
    mode = wanted
    const { data } = await worker.recognize(await asPng(picture))
    return data
  }
  return {
    read: async (picture) => {
      const { text, confidence } = await recognise(picture)
      const probability = confidence / 100
      return { text: figureOf(text, picture.unit), probability, clear: probability >= 0.9 }
    },
    end: async () => {
      await worker.terminate()
    },
  }
}
