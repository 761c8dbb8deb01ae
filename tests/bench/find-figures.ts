/**
 * What is found and read of drawn sheets, and how long it takes. The chance of being a figure was fitted on sheets 101 to
 * 115: others tell what it is worth. Run by `node scripts/run-ts.mjs tests/bench/find-figures.ts [first seed] [sheets]`;
 * with `sample` instead of a seed, of the sample's scan at half its size, as the workbench looks at it.
 */
import sharp from 'sharp'
import type { GreyWindow } from '../../src/core/imaging/window/grey-window.ts'
import type { LengthUnit } from '../../src/core/quantity/length.ts'
import { glyphReader } from '../../src/core/reading/box/glyph-reader.ts'
import { drawSheet } from '../core/reading/drawn/sheet/draw-sheet.ts'
import {
  lookForAll,
  type SheetFound,
  scoreSheet,
  type TrueLettering,
} from '../core/reading/judge/score-sheet.ts'
import { sampleFigures } from './sample-figures.ts'

const [first = '1', sheets = '30'] = process.argv.slice(2)
const reader = glyphReader()

/** Everything found and read, and seconds of the processor: for finding, and for all. */
function run(small: GreyWindow, full: GreyWindow, unit: LengthUnit) {
  const start = process.cpuUsage()
  const spent = (): string => (process.cpuUsage(start).user / 1e6).toFixed(1)
  let finding = ''
  const found = lookForAll(reader, small, full, unit, () => {
    finding = spent()
  })
  return { found, seconds: `${finding} s to find, ${spent()} s in all` }
}

const sums = { figures: 0, found: 0, exact: 0, shown: 0, invented: 0, words: 0, parts: 0 }
function tell(
  name: string,
  found: readonly SheetFound[],
  figures: readonly TrueLettering[],
  words: readonly TrueLettering[],
  seconds: string,
): void {
  const score = scoreSheet(found, figures, words)
  for (const key of Object.keys(sums) as (keyof typeof sums)[]) sums[key] += score[key]
  const { missed, wrong } = score
  console.log(
    `${name}: ${score.found} of ${score.figures} found, ${score.exact} exact, ${score.invented} invented, ${score.words} other words shown; ${seconds}`,
  )
  if (missed.length > 0) console.log(`  missed: ${missed.join(' | ')}`)
  if (wrong.length > 0) console.log(`  wrong: ${wrong.join(' | ')}`)
}

if (first === 'sample') {
  const { scan, width, height, figures } = sampleFigures()
  const load = async (w: number, h: number): Promise<GreyWindow> => {
    const data = await sharp(scan).resize(w, h, { fit: 'fill' }).greyscale().raw().toBuffer()
    return { left: 0, top: 0, width: w, height: h, data: new Uint8Array(data) }
  }
  const { found, seconds } = run(await load(width / 2, height / 2), await load(width, height), 'in')
  tell('sample', found, figures, [], seconds)
} else {
  for (let seed = Number(first); seed < Number(first) + Number(sheets); seed++) {
    const { grey, figures, words, ways, lettering, level } = await drawSheet(seed)
    const picture = { left: 0, top: 0, width: grey.width, height: grey.height, data: grey.pixels }
    const { found, seconds } = run(picture, picture, ways.unit)
    tell(`${seed} ${lettering}, ${level}`, found, figures, words, seconds)
  }
  console.log(JSON.stringify(sums))
}
