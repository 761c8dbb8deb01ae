import type { LetteringName } from '../letterings.ts'
import type { Board } from './board.ts'

const NAMES = ['BEARING BRACKET', 'COWL FLANGE', 'DOOR GUIDE', 'LAMP STANDARD', 'VALVE SPINDLE'] as const
const PIECES = ['PLATE', 'RING', 'GUSSET', 'SPINDLE', 'BUSH', 'STRAP', 'COVER', 'LUG'] as const
const MADE_OF = ['M.S.', 'C.I.', 'BRASS', 'W.I.', 'COPPER'] as const
const NOTES = [
  'ALL RIVETS COUNTERSUNK',
  'REMOVE ALL SHARP EDGES',
  'FINISH ALL OVER',
  'TO BE TINNED AFTER FORMING',
  'LAP SEAMS TO BE SOLDERED',
] as const

/** The title block in the lower right corner; how wide and high it is. */
export function titleBlock(board: Board, lettering: LetteringName): readonly [number, number] {
  const { d, width, height } = board
  const h = board.ways.height
  const lines = [
    d.pick(NAMES),
    `SCALE ${d.pick(['HALF SIZE', 'FULL SIZE', '3 IN. = 1 FT.'])}`,
    `DRAWN ${d.pick(['E.M.', 'T.W.', 'R.A.'])}   ${d.whole(1, 28)}.${d.whole(1, 12)}.${d.whole(1904, 1938)}`,
    `SHEET ${d.whole(1, 40)}`,
  ]
  const [wide, row] = [27 * h, 2.4 * h]
  const [left, top] = [width - 2 * h - wide, height - 2 * h - lines.length * row]
  lines.forEach((words, i) => {
    board.line([left, top + i * row], [left + wide, top + i * row], 0.8)
    board.letter(
      words,
      [left + 0.8 * h, top + (i + 1) * row - 0.7 * h],
      i === 0 ? 1.1 * h : 0.85 * h,
      lettering,
    )
  })
  board.outline(
    [
      [left, top],
      [left + wide, top],
      [left + wide, top + lines.length * row],
      [left, top + lines.length * row],
    ],
    1.4,
  )
  board.reserve([left, top, wide, lines.length * row])
  return [wide, lines.length * row]
}

/** The list of parts over the title block; how high it is. */
export function partsList(board: Board, lettering: LetteringName, wide: number, above: number): number {
  const { d, width, height } = board
  const h = board.ways.height
  const rows = d.whole(3, 7)
  const row = 2 * h
  const [left, bottom] = [width - 2 * h - wide, height - 2 * h - above]
  const columns = [0, 0.12, 0.52, 0.66] as const
  for (let i = 0; i < rows; i++) {
    const y = bottom - i * row
    board.line([left, y - row], [left + wide, y - row], 0.6)
    const cells = [String(i + 1), d.pick(PIECES), String(d.whole(1, 12)), d.pick(MADE_OF)]
    cells.forEach((words, k) => {
      board.letter(words, [left + (columns[k] ?? 0) * wide + 0.5 * h, y - 0.55 * h], 0.8 * h, lettering)
    })
  }
  for (const column of columns) {
    const x = left + column * wide
    board.line([x, bottom], [x, bottom - rows * row], 0.6)
  }
  board.reserve([left, bottom - rows * row, wide, rows * row])
  return rows * row
}

/** Notes in the lower left corner. */
export function notes(board: Board, lettering: LetteringName): void {
  const { d, height } = board
  const h = board.ways.height
  const count = d.whole(2, 4)
  const first = d.whole(0, NOTES.length - count)
  const top = height - (2.4 + 1.9 * count) * h
  board.letter('NOTES', [3.5 * h, top - 1.9 * h], h, lettering)
  NOTES.slice(first, first + count).forEach((words, i) => {
    board.letter(`${i + 1}. ${words}`, [3.5 * h, top + i * 1.9 * h], 0.85 * h, lettering)
  })
}
