import sharp from 'sharp'
import type { Chance } from './chance.ts'
import type { Board } from './drawing-board.ts'
import { svgPath } from './pen.ts'
import { DISTORTION } from './sheet-distortion.ts'

/** How much ink lies on each pixel of the scan: 0 none, 255 full. One byte a pixel, row by row. */
export async function inkLayer(board: Board, chance: Chance): Promise<Buffer> {
  const { imageWidth: w, imageHeight: h } = DISTORTION
  const paths = board.strokes.map((stroke) => svgPath(stroke, chance))
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}" viewBox="0 0 ${w} ${h}">
<rect width="${w}" height="${h}" fill="#fff"/>
<g fill="none" stroke="#000" stroke-linecap="round" stroke-linejoin="round">${paths.join('\n')}</g></svg>`
  return await sharp(Buffer.from(svg), { unlimited: true })
    .flatten({ background: '#fff' })
    .toColourspace('b-w')
    .negate()
    .blur(0.75)
    .raw()
    .toBuffer()
}
