/**
 * What it helps a reader to know the hand: glyphs taken for others, and figures with such a glyph, after 0, 10 and 50
 * figures of the same sheet were corrected or accepted, on sheets each of one lettering and one state; whole figures as
 * `readBox` reads them in a box dragged round; and whether its probabilities still hold. How a hand is learned was chosen
 * on the letterings numbered 3, 5, 10, 11 and 14; the others are asked unless some are named.
 * Run by `npm run bench:hand [seed] [asked] [letterings by number, with commas]`.
 */
import { glyphReader, readerOfHand } from '../../src/core/reading/box/glyph-reader.ts'
import { handOfFigures } from '../../src/core/reading/hand/hand-of-figures.ts'
import { LETTERINGS } from '../core/reading/drawn/letterings.ts'
import type { Level } from '../core/reading/drawn/levels.ts'
import { boxReader } from '../core/reading/judge/box-reader.ts'
import { figuresOfHand, type HandScore, lessonOf, scoreHand } from '../core/reading/judge/hand-lesson.ts'
import { reliability } from '../core/reading/judge/reliability.ts'
import type { ReadAnswer } from '../core/reading/judge/score-reader.ts'

const CHOSEN_ON = [3, 5, 10, 11, 14]
const KNOWN = [0, 10, 50]
const [seed = '1', asked = '40', named = ''] = process.argv.slice(2)
const numbers =
  named === '' ? [...LETTERINGS.keys()].filter((n) => !CHOSEN_ON.includes(n)) : named.split(',').map(Number)

const reader = glyphReader()
const all = new Map<string, HandScore[]>()
const percent = (part: number, of: number) => `${((100 * part) / Math.max(1, of)).toFixed(2)} %`

function line(name: string, scores: readonly HandScore[]): void {
  const sum = (of: (score: HandScore) => number) => scores.reduce((total, score) => total + of(score), 0)
  console.log(
    [
      name.padEnd(44),
      `figures ${percent(
        sum((s) => s.figuresWrong),
        sum((s) => s.figures),
      )} of ${sum((s) => s.figures)}`,
      `glyphs ${percent(
        sum((s) => s.glyphsWrong),
        sum((s) => s.glyphs),
      )}`,
      `of ${sum((s) => s.glyphs)}`,
      `log ${(sum((s) => s.logs) / sum((s) => s.glyphs)).toFixed(4)}`,
    ].join('  '),
  )
}

/** A whole figure as it was read. */
interface Whole {
  readonly answer: ReadAnswer
  readonly right: boolean
}

const wholes = new Map<string, Whole[]>()

/** How many whole figures are right, how many are called clear, and how many of those are not. */
function wholeLine(name: string, read: readonly Whole[]): void {
  const right = read.filter((one) => one.right).length
  const clear = read.filter(({ answer }) => answer.clear && answer.text !== null)
  const wrong = clear.filter((one) => !one.right).length
  console.log(
    `${name.padEnd(44)}  whole ${right} of ${read.length} right  clear ${clear.length}, of them wrong ${wrong}`,
  )
}

const times: number[] = []
for (const number of numbers) {
  const lettering = LETTERINGS[number]
  if (lettering === undefined) continue
  for (const level of ['moderate', 'bad'] as const satisfies readonly Level[]) {
    const sheet = { lettering, level, seed: 1000 * Number(seed) + number }
    const lessons = (await figuresOfHand(sheet, 0, Math.max(...KNOWN))).map((f) => lessonOf(reader, f))
    const drawn = await figuresOfHand(sheet, 100, 100 + Number(asked))
    const questions = drawn.map((figure) => lessonOf(reader, figure, figure.written))
    const begun = process.cpuUsage()
    handOfFigures(lessons)
    const { user, system } = process.cpuUsage(begun)
    times.push((user + system) / 1000)
    for (const known of KNOWN) {
      const hand = handOfFigures(lessons.slice(0, known))
      const score = scoreHand(hand, questions)
      const name = `${lettering}, ${level}, ${known}`
      line(name, [score])
      const of = `${level}, ${known}`
      all.set(of, [...(all.get(of) ?? []), score])
      const read = boxReader(1, readerOfHand(reader, hand))
      const answers: Whole[] = []
      for (const figure of drawn) {
        const answer = await read(figure)
        answers.push({ answer, right: answer.text === figure.text })
      }
      wholeLine(name, answers)
      wholes.set(of, [...(wholes.get(of) ?? []), ...answers])
    }
  }
}
console.log()
for (const [name, scores] of all) line(name, scores)
for (const [name, read] of wholes) wholeLine(name, read)
for (const known of KNOWN) {
  const { bands, ece } = reliability(
    [...wholes].flatMap(([of, read]) => (of.endsWith(` ${known}`) ? read : [])),
  )
  console.log(
    `\n${known} known: stated probabilities and how many are right; expected calibration error ${ece.toFixed(4)}`,
  )
  for (const { from, to, answers, stated, right } of bands)
    console.log(`  ${from}–${to}: ${answers} figures, stated ${stated.toFixed(3)}, right ${right.toFixed(3)}`)
}
const most = Math.max(...times).toFixed(0)
console.log(`a hand of 50 figures: at most ${most} ms of a processor, once their glyphs were known`)
