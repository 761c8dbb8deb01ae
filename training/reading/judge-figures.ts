/**
 * What the reader makes of figures like those of the examination in founts that calibrate, for `weigh.py`: for each its
 * truth and what it could be. Run by `node scripts/run-ts.mjs training/reading/judge-figures.ts FOUNTS SEED FROM TO OUT.json`,
 * FOUNTS the folder of `fonts.txt`'s packages.
 */
import { writeFileSync } from 'node:fs'
import { bestLook } from '../../src/core/reading/box/best-look.ts'
import { glyphReader } from '../../src/core/reading/box/glyph-reader.ts'
import { draggedBox } from '../../tests/core/reading/judge/box-reader.ts'
import { heldFigure } from './held-figures.ts'

const [founts = '', seed = '1', from = '0', to = '1300', out = ''] = process.argv.slice(2)
const reader = glyphReader()
const judged = []
let spent = 0
for (let n = Number(from); n < Number(to); n++) {
  const figure = await heldFigure(founts, Number(seed), n)
  const { width, height, pixels } = figure.grey
  const picture = { left: 0, top: 0, width, height, data: pixels }
  const begun = performance.now()
  const read = bestLook(reader, picture, draggedBox(figure, Number(seed)), { unit: figure.unit })
  spent += performance.now() - begun
  judged.push({
    n,
    truth: figure.text,
    written: figure.written,
    level: figure.level,
    held: figure.held,
    cap: figure.height,
    angle: figure.frame.angle,
    turned: read?.look.box.angle ?? null,
    asRead: read?.ways[0]?.lattice.slots.map(({ alternatives }) => alternatives[0]?.text ?? '?').join(''),
    fits: read?.likely.fits ?? 0,
    figures: (read?.likely.figures ?? []).slice(0, 10).map(({ text, probability }) => [text, probability]),
  })
}
writeFileSync(out, JSON.stringify(judged))
console.log(`${judged.length} figures, ${(spent / judged.length).toFixed(0)} ms each`)
