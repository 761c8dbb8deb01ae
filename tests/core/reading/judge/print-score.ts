import { reliability } from './reliability.ts'
import type { MarkedAnswer } from './score-reader.ts'

const percent = (part: number, whole: number): string =>
  whole === 0 ? '–' : `${((100 * part) / whole).toFixed(1)} %`

/** A line of a table: how many of these were read, and how far to trust what was called clear. */
function line(of: string, answers: readonly MarkedAnswer[]) {
  const clear = answers.filter(({ answer }) => answer.clear && answer.text !== null)
  const right = (some: readonly MarkedAnswer[]) => some.filter((a) => a.right).length
  return {
    of,
    figures: answers.length,
    right: percent(right(answers), answers.length),
    'no figure': percent(answers.filter(({ answer }) => answer.text === null).length, answers.length),
    'called clear': percent(clear.length, answers.length),
    'right of clear': percent(right(clear), clear.length),
  }
}

const by = (answers: readonly MarkedAnswer[], keyOf: (answer: MarkedAnswer) => string) =>
  [...new Set(answers.map(keyOf))].map((key) =>
    line(
      key,
      answers.filter((answer) => keyOf(answer) === key),
    ),
  )

const band = (h: number): string =>
  h < 20 ? '14–19 px' : h < 30 ? '20–29 px' : h < 42 ? '30–41 px' : '42–60 px'

/** Prints a reader's marks by level, lettering, kind, layout and size, and how its probabilities hold. */
export function printScore(name: string, answers: readonly MarkedAnswer[]): void {
  console.log(`\n${name}: ${answers.length} figures`)
  console.table([line('all', answers), ...by(answers, (a) => a.level)])
  console.table(by(answers, (a) => a.lettering))
  console.table(by(answers, (a) => a.kind))
  console.table(by(answers, (a) => (a.lines > 1 ? 'two lines' : a.layout)))
  console.table(by(answers, (a) => band(a.height)).sort((a, b) => a.of.localeCompare(b.of)))
  const { bands, ece } = reliability(answers)
  console.table(
    bands.map((b) => ({
      stated: `${b.from}–${b.to}`,
      answers: b.answers,
      mean: b.stated.toFixed(4),
      right: b.right.toFixed(4),
    })),
  )
  console.log(`expected calibration error ${ece.toFixed(4)}`)
}
