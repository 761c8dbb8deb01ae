/**
 * What the reader makes of figures that `boxes.py` drew, for `weigh.py`: for each its truth and what it could be.
 * Run by `node scripts/run-ts.mjs training/reading/judge-boxes.ts BOXES OUT.json [from] [to]`.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { formatFigure } from '../../src/core/quantity/format/format-figure.ts'
import { NotationError } from '../../src/core/quantity/notation/notation-error.ts'
import { parseFigure } from '../../src/core/quantity/parse/parse-figure.ts'
import { bestLook } from '../../src/core/reading/box/best-look.ts'
import { glyphReader } from '../../src/core/reading/box/glyph-reader.ts'

interface Drawn {
  at: number
  width: number
  height: number
  text: string
  angle: number
  cap: number
  box: [number, number, number, number]
}

const [boxes = '', out = '', from = '0', to = '100000'] = process.argv.slice(2)
const index = JSON.parse(readFileSync(`${boxes}.json`, 'utf8')) as Drawn[]
const pixels = readFileSync(`${boxes}.bin`)
const reader = glyphReader()
const context = { unit: 'in' } as const

/** In the one notation; null for what is none. */
function standard(text: string): string | null {
  try {
    return formatFigure(parseFigure(text, context), context)
  } catch (error) {
    if (error instanceof NotationError) return null
    throw error
  }
}

const judged = index.slice(Number(from), Number(to)).flatMap((drawn) => {
  const truth = standard(drawn.text)
  // Upside down no figure is read; what is none by the notation tells nothing of which figure it is.
  if (truth === null || Math.abs(drawn.angle) > 95) return []
  const data = new Uint8Array(pixels.buffer, pixels.byteOffset + drawn.at, drawn.width * drawn.height)
  const [x, y, width, height] = drawn.box
  const picture = { left: 0, top: 0, width: drawn.width, height: drawn.height, data }
  const read = bestLook(reader, picture, { x, y, width, height }, context)
  const likely = read?.likely.figures ?? []
  return [
    {
      truth,
      written: drawn.text,
      cap: drawn.cap,
      angle: drawn.angle,
      turned: read?.look.box.angle ?? null,
      asRead: read?.ways[0]?.lattice.slots.map(({ alternatives }) => alternatives[0]?.text ?? '?').join(''),
      fits: read?.likely.fits ?? 0,
      figures: likely.slice(0, 10).map(({ text, probability }) => [text, probability]),
    },
  ]
})
writeFileSync(out, JSON.stringify(judged))
console.log(`${judged.length} figures`)
