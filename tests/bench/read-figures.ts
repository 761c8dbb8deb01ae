/**
 * What the reader of figures, and Tesseract alone, read of the examination: tables by level, lettering, kind, layout and size, and how its confidence
 * holds. Run by `npm run bench:reading [seed] [figures] [ours]`.
 */
import { dice } from '../core/reading/drawn/dice.ts'
import { drawFigure } from '../core/reading/drawn/draw-figure.ts'
import { SET_SIZE, setOrder } from '../core/reading/drawn/figure-set.ts'
import { boxReader } from '../core/reading/judge/box-reader.ts'
import { printScore } from '../core/reading/judge/print-score.ts'
import { type Reader, scoreReader } from '../core/reading/judge/score-reader.ts'
import { tesseractReader } from '../core/reading/judge/tesseract-reader.ts'

const [seed = '1', figures = String(SET_SIZE), only = ''] = process.argv.slice(2)

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

async function examine(name: string, reader: Reader): Promise<void> {
  let reading = 0
  const timed: Reader = async (figure) => {
    const begun = performance.now()
    const answer = await reader(figure)
    reading += performance.now() - begun
    return answer
  }
  const answers = await scoreReader(timed, Number(seed), Number(figures))
  printScore(name, answers)
  console.log(`${(reading / answers.length).toFixed(0)} ms a figure`)
}

await drawingTimes()
await examine('The reader of figures', boxReader(Number(seed)))
if (only !== 'ours') {
  const tesseract = await tesseractReader()
  await examine('Tesseract alone', tesseract.read)
  await tesseract.end()
}
