/**
 * Drawn sheets to be looked at, with the true frame of each figure in red and of other words in blue.
 * Run by `node scripts/run-ts.mjs tests/bench/reading-sheets.ts FOLDER [first seed] [sheets]`.
 */
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { createCanvas } from '@napi-rs/canvas'
import type { FigureFrame } from '../core/reading/drawn/draw-figure.ts'
import { drawSheet } from '../core/reading/drawn/sheet/draw-sheet.ts'

const [folder = '.', first = '1', sheets = '30'] = process.argv.slice(2)
mkdirSync(folder, { recursive: true })
for (let seed = Number(first); seed < Number(first) + Number(sheets); seed++) {
  const begun = performance.now()
  const { grey, figures, words, lettering, level } = await drawSheet(seed)
  const took = performance.now() - begun
  const context = createCanvas(grey.width, grey.height).getContext('2d')
  const image = context.createImageData(grey.width, grey.height)
  new Uint32Array(image.data.buffer).set(Uint32Array.from(grey.pixels, (v) => 0xff000000 + v * 0x10101))
  context.putImageData(image, 0, 0)
  const frame = ({ centre, width, height, angle }: FigureFrame, colour: string) => {
    context.save()
    context.translate(...centre)
    context.rotate((angle * Math.PI) / 180)
    context.strokeStyle = colour
    context.lineWidth = 2
    context.strokeRect(-width / 2, -height / 2, width, height)
    context.restore()
  }
  for (const figure of figures) frame(figure.frame, '#d00')
  for (const lettered of words) frame(lettered.frame, '#06d')
  writeFileSync(join(folder, `sheet-${seed}.png`), context.canvas.toBuffer('image/png'))
  const size = `${grey.width} × ${grey.height}`
  console.log(`${seed}: ${size}, ${lettering}, ${level}, ${figures.length} figures, ${took.toFixed(0)} ms`)
}
