import type { SeenWord } from './seen-word.ts'

/** Words of one row overlap by this share of the lower one's height. Common practice, no source. */
const OVERLAP = 0.5
/** And are at most so many times as high as each other, but for signs as low as `=`. Common practice, no source. */
const ALIKE = 2.2
const ALIKE_SIGN = 5
/** A gap of so many heights parts what stands side by side. Common practice, no source. */
const GAP = 2

/** Words that stand in one row and belong together, from left to right. */
export type WordRow = readonly SeenWord[]

/** Puts words into rows, from above to below. */
export function wordRows(words: readonly SeenWord[]): WordRow[] {
  const rows: SeenWord[][] = []
  for (const word of [...words].sort((a, b) => a.box[0] - b.box[0])) {
    const fitting = rows.filter((row) => goesOn(row.at(-1), word))
    fitting.sort((a, b) => endOf(b) - endOf(a))
    const [row] = fitting
    if (row === undefined) rows.push([word])
    else row.push(word)
  }
  return rows.sort((a, b) => topOf(a) - topOf(b))
}

function goesOn(last: SeenWord | undefined, word: SeenWord): boolean {
  if (last === undefined) return false
  const [x, y, , height] = word.box
  const [x0, y0, width0, height0] = last.box
  const alike = isSign(word) || isSign(last) ? ALIKE_SIGN : ALIKE
  const overlap = Math.min(y + height, y0 + height0) - Math.max(y, y0)
  const [low, high] = [Math.min(height, height0), Math.max(height, height0)]
  return overlap >= OVERLAP * low && high <= alike * low && x - x0 - width0 <= GAP * high
}

function endOf(row: WordRow): number {
  const [x = 0, , width = 0] = row.at(-1)?.box ?? []
  return x + width
}

const topOf = (row: WordRow): number => Math.min(...row.map(({ box }) => box[1]))

const isSign = ({ text }: SeenWord): boolean => !/[\p{L}\p{N}]/u.test(text)

/** The upright box round words. */
export function boxRound(words: readonly SeenWord[]): SeenWord['box'] {
  const left = Math.min(...words.map(({ box }) => box[0]))
  const top = Math.min(...words.map(({ box }) => box[1]))
  const right = Math.max(...words.map(({ box: [x, , width] }) => x + width))
  const bottom = Math.max(...words.map(({ box: [, y, , height] }) => y + height))
  return [left, top, right - left, bottom - top]
}
