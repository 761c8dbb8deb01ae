import { type Board, line, PEN, words } from './drawing-board.ts'

const inch = 25.4

/** Border, heading, title block, list of parts and notes. */
export function layOutMargins(board: Board): void {
  frame(board, 0.5, 0.5, 16.5, 10.5, 0.7)
  words(board, [0.8 * inch, 0.8 * inch], 'DECK VENTILATOR', { height: 6, anchor: 'start', width: 0.6 })
  words(board, [0.8 * inch, 1.06 * inch], 'CHAIN FERRY No. 2', { height: 3, anchor: 'start' })
  words(board, [3.62 * inch, 10.04 * inch], 'WORK TO FIGURED DIMENSIONS', { height: 2.6 })
  words(board, [3.62 * inch, 10.24 * inch], 'DRUM, CONE, NECK AND HOOD OF STEEL SHEET', { height: 2.3 })
  titleBlock(board)
  listOfParts(board)
}

function frame(board: Board, x0: number, y0: number, x1: number, y1: number, width: number): void {
  const corners = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
    [x0, y0],
  ] as const
  corners.slice(1).forEach(([x, y], i) => {
    const [px, py] = corners[i] ?? [x, y]
    line(board, [px * inch, py * inch], [x * inch, y * inch], width)
  })
}

function titleBlock(board: Board): void {
  const [x0, x1, y0] = [11.75, 16.5, 8.62]
  const middle = ((x0 + x1) / 2) * inch
  frame(board, x0, y0, x1, 10.5, 0.45)
  const row = (y: number, text: string, height: number, width: number = PEN.lettering) =>
    words(board, [middle, y * inch], text, { height, width })
  const rule = (y: number) => line(board, [x0 * inch, y * inch], [x1 * inch, y * inch], 0.25)
  row(8.79, 'AVERDALE CHAIN FERRY TRUST', 4.2, PEN.title)
  rule(8.95)
  row(9.11, 'DECK VENTILATOR', 4.8, 0.5)
  row(9.33, 'HOLMGARTH FOUNDRY, PELLOW STAITHE', 2.7)
  rule(9.46)
  const cell = (x: number, y: number, text: string) =>
    words(board, [(x0 + x) * inch, y * inch], text, { height: 2.4, anchor: 'start' })
  cell(0.1, 9.59, `SCALES 3" & 6" = 1'-0"`)
  cell(2.75, 9.59, 'DRAWN E.T.W.')
  rule(9.71)
  cell(0.1, 9.84, 'DATE 14 MARCH 1911')
  cell(2.75, 9.84, 'TRACED R.B.')
  rule(9.96)
  line(board, [(x0 + 2.65) * inch, 9.46 * inch], [(x0 + 2.65) * inch, 9.96 * inch], 0.25)
  cell(0.1, 10.09, 'ALTERED 2 NOV. 1912: 8 HOLES WERE 6. E.T.W.')
  rule(10.21)
  row(10.36, 'DRAWING No. 1172', 3.6, 0.36)
}

const PARTS = [
  ['1', 'FOOT FLANGE', 'CAST IRON', '1'],
  ['2', 'DRUM', 'STEEL SHEET', '1'],
  ['3', 'CONE AND NECK', 'STEEL SHEET', '1'],
  ['4', 'HOOD WITH CAP', 'STEEL SHEET', '1'],
  ['5', 'STAY', 'WROUGHT IRON', '4'],
  ['6', 'BRACKET', 'CAST IRON', '1'],
  ['7', 'DAMPER LEVER', 'WROUGHT IRON', '1'],
] as const

function listOfParts(board: Board): void {
  const [x0, x1, y0, y1] = [7.0, 11.45, 8.62, 10.5]
  const step = (y1 - y0) / (PARTS.length + 2)
  frame(board, x0, y0, x1, y1, 0.45)
  const columns = [x0, x0 + 0.45, x0 + 2.2, x0 + 3.8, x1]
  for (const x of columns.slice(1, -1)) {
    line(board, [x * inch, (y0 + step) * inch], [x * inch, y1 * inch], 0.25)
  }
  for (let i = 1; i < PARTS.length + 2; i++) {
    line(board, [x0 * inch, (y0 + i * step) * inch], [x1 * inch, (y0 + i * step) * inch], i < 3 ? 0.35 : 0.18)
  }
  const at = (i: number) => (y0 + (i + 0.5) * step) * inch
  words(board, [((x0 + x1) / 2) * inch, at(0)], 'LIST OF PARTS', { height: 3.2, width: 0.36 })
  const rows = [['No.', 'NAME', 'OF WHAT', 'OFF'], ...PARTS]
  rows.forEach((row, i) => {
    row.forEach((text, k) => {
      const [from, to] = [columns[k] ?? x0, columns[k + 1] ?? x1]
      const centred = k === 0 || k === 3
      words(board, [(centred ? (from + to) / 2 : from + 0.09) * inch, at(i + 1)], text, {
        height: 2.3,
        anchor: centred ? 'middle' : 'start',
      })
    })
  })
}
