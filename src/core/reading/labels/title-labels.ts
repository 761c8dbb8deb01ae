import type { SeenWord } from './seen-word.ts'
import { labelAt, type TitleField } from './title-field.ts'
import { boxRound, type WordRow, wordRows } from './word-rows.ts'

/** What could stand in a field of a title block. */
export interface TitleLabel {
  readonly field: TitleField
  readonly text: string
  /** That each of its words was read right, as far as they are known apart. */
  readonly probability: number
  /** Round its words, [x, y, width, height] in pixels of the page. */
  readonly box: readonly [number, number, number, number]
}

/** Of each field so many at most: a sheet may give a scale under each of its views. */
const MOST = 3
/** What stands below a label is no further down than so many of its heights. Common practice, no source. */
const BELOW = 3
/** Lettering that is so many times as high as most of it is the title's. Common practice, no source. */
const TITLE_HEIGHT = 1.3
/** Words that are less likely to be right than this are lines and stains, as a rule, where no label vouches for them. */
const A_WORD = 0.5

/**
 * What the words of a title block say of its drawing: what stands beside a label (SCALE, DATE, DRAWN, ...), or, where
 * nothing does, below it; and as the title, where none is labelled, the highest lettering. Proposals for a person, the
 * surest of each field first.
 * @param words of the part of the page where the title block is
 */
export function titleLabels(words: readonly SeenWord[]): TitleLabel[] {
  const rows = wordRows(words.filter(({ text }) => text.trim() !== ''))
  const found = rows.flatMap((row) => labelled(row, rows))
  if (!found.some(({ field }) => field === 'title')) found.push(...highest(rows.filter(isUnlabelled(found))))
  const surest = [...found].sort((a, b) => b.probability - a.probability)
  return surest.filter(
    (one, i) => surest.slice(0, i).filter(({ field }) => field === one.field).length < MOST,
  )
}

/** The labels of a row with what belongs to them. */
function labelled(row: WordRow, rows: readonly WordRow[]): TitleLabel[] {
  const found: TitleLabel[] = []
  for (let at = 0; at < row.length; at++) {
    const label = labelAt(row, at)
    if (label === undefined) continue
    const from = at + label.words
    const beside = upToLabel(row, from)
    const value = saysSomething(beside) ? beside : below(row.slice(at, from), rows)
    if (saysSomething(value)) found.push(labelOf(label.field, value))
    at = from - 1
  }
  return found
}

/** The words of a row from one on, up to the next label. */
function upToLabel(row: WordRow, from: number): WordRow {
  let to = from
  while (to < row.length && labelAt(row, to) === undefined) to++
  return row.slice(from, to)
}

/** The row below a label: the nearest that begins under it, and is none of labels itself. */
function below(label: WordRow, rows: readonly WordRow[]): WordRow {
  const [left, top, width, height] = boxRound(label)
  const under = rows.filter((row) => {
    const [x, y] = boxRound(row)
    const down = y - top - height
    const beneath = down > -height / 2 && down <= BELOW * height
    return beneath && x >= left - 2 * height && x <= left + width && labelAt(row, 0) === undefined
  })
  under.sort((a, b) => boxRound(a)[1] - boxRound(b)[1])
  return upToLabel(under[0] ?? [], 0)
}

/** Whether a row is neither at a label nor what a label says. */
const isUnlabelled =
  (found: readonly TitleLabel[]) =>
  (row: WordRow): boolean => {
    const [left, top, width, height] = boxRound(row)
    return (
      row.every((_, i) => labelAt(row, i) === undefined) &&
      found.every(
        ({ box: [x, y, across, down] }) =>
          x >= left + width || x + across <= left || y >= top + height || y + down <= top,
      )
    )
  }

/** The row of the highest lettering, where it stands out. */
function highest(rows: readonly WordRow[]): TitleLabel[] {
  const words = rows.filter((row) => row.every(isWord) && row.some(({ text }) => /\p{L}{3}/u.test(text)))
  const heights = words.map(heightOf)
  const middle = [...heights].sort((a, b) => a - b)[heights.length >> 1] ?? 0
  const most = Math.max(...heights, 0)
  if (most < TITLE_HEIGHT * middle) return []
  const row = words[heights.indexOf(most)]
  return row === undefined ? [] : [labelOf('title', row)]
}

/** Of the words of a row the one in the middle: a comma makes a word no higher than a quote does. */
function heightOf(row: WordRow): number {
  const heights = row.map(({ box }) => box[3]).sort((a, b) => a - b)
  return heights[heights.length >> 1] ?? 0
}

const isWord = ({ text, probability }: SeenWord): boolean =>
  probability >= A_WORD && /[\p{L}\p{N}]/u.test(text)

const saysSomething = (words: WordRow): boolean => words.some(({ text }) => /[\p{L}\p{N}]/u.test(text))

const labelOf = (field: TitleField, words: WordRow): TitleLabel => ({
  field,
  text: words.map(({ text }) => text).join(' '),
  probability: words.reduce((product, { probability }) => product * probability, 1),
  box: boxRound(words),
})
