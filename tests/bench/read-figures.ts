/**
 * What Tesseract alone reads of the examination: tables by level, lettering, kind, layout and size, and how its confidence
 * holds. Run by `npm run bench:reading [seed] [figures]`.
 */
import { dice } from '../core/reading/drawn/dice.ts'
import { drawFigure } from '../core/reading/drawn/draw-figure.ts'
import { SET_SIZE, setOrder } from '../core/reading/drawn/figure-set.ts'
import { printScore } from '../core/reading/judge/print-score.ts'
import { scoreReader } from '../core/reading/judge/score-reader.ts'
import { tesseractReader } from '../core/reading/judge/tesseract-reader.ts'

const [seed = '1', figures = String(SET_SIZE)] = process.argv.slice(2)

async function drawingTimes(): Promise<void> {
  const times: number[] = []
  for (let n = 0; n < 150; n++) {
    const { order } = setOrder(dice(Number(seed)).whole(1, 1e6), n)
    const begun = performance.now()
    await drawFigure(order)
    times.push(performance.now() - begun)
  }
  times.sort((a, b) => a - b)
  const at = (share: number) => (times[Math.floor(share * (times.length - 1))] ?? 0).toFixed(1)
  console.log(`drawing a figure: median ${at(0.5)} ms, nine in ten under ${at(0.9)} ms`)
}

await drawingTimes()
const tesseract = await tesseractReader()
const begun = performance.now()
const answers = await scoreReader(tesseract.read, Number(seed), Number(figures))
printScore('Tesseract alone', answers)
console.log(`${((performance.now() - begun) / answers.length).toFixed(0)} ms a figure, drawing included`)
await tesseract.end()
