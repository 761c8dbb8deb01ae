import { type Dice, dice } from '../dice.ts'
import type { DrawnGrey } from '../grey.ts'
import { LETTERINGS, type LetteringName } from '../letterings.ts'
import type { Level } from '../levels.ts'
import { inkOf, scanInk } from '../scan-ink.ts'
import { Board, type SheetFigure, type SheetWays, type SheetWords } from './board.ts'
import { notes, partsList, titleBlock } from './furniture.ts'
import { VIEWS, type ViewRoom } from './views.ts'

/** A whole sheet with all that is lettered on it. */
export interface DrawnSheet {
  readonly grey: DrawnGrey
  readonly lettering: LetteringName
  readonly level: Level
  readonly ways: SheetWays
  /** Its dimensions and call-outs. */
  readonly figures: readonly SheetFigure[]
  /** All else: notes, lists, titles, some of them numbers too. */
  readonly words: readonly SheetWords[]
}

function someWays(lettering: LetteringName, width: number, d: Dice): SheetWays {
  const unit = d.happens(0.75) ? 'in' : 'mm'
  const height = Math.round(width * d.between(0.0065, 0.0095))
  return {
    unit,
    lettering,
    height,
    layout: d.pick(['stacked', 'stacked', 'stacked', 'diagonal', 'inline']),
    over: unit === 'mm' ? d.happens(0.8) : d.happens(0.25),
    outline: height * d.between(0.1, 0.15),
    scale: unit === 'in' ? d.pick([37.5, 75, 100, 150, 300]) : d.pick([1.2, 2.4, 4.8, 6, 12]),
  }
}

/** Parts the sheet above its notes into rooms of views, each with a margin for its dimensions. */
function viewRooms(board: Board, below: number): ViewRoom[] {
  const { d, ways } = board
  const q = ways.height
  const columns = board.width > 125 * q ? 3 : 2
  const rows = 2
  const [wide, high] = [(board.width - 6 * q) / columns, (board.height - 5 * q - below) / rows]
  const rooms: ViewRoom[] = []
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const [left, above] = [3 * q + column * wide + 9 * q, 3 * q + row * high + 6 * q]
      const size = [(wide - 17 * q) * d.between(0.75, 1), (high - 13 * q) * d.between(0.75, 1)] as const
      rooms.push([left, above, ...size])
    }
  }
  return rooms
}

/** Draws a sheet of parts that nobody makes; its lettering goes round by the seed. */
export async function drawSheet(seed: number): Promise<DrawnSheet> {
  const d = dice(seed, 7)
  const lettering = LETTERINGS[Math.abs(seed) % LETTERINGS.length] ?? 'Work Sans'
  const width = d.whole(2500, 4500)
  const ways = someWays(lettering, width, d)
  const height = Math.round(width * d.between(0.62, 0.76))
  const board = new Board(width, height, ways, d)
  const q = ways.height
  board.outline(
    [
      [1.5 * q, 1.5 * q],
      [width - 1.5 * q, 1.5 * q],
      [width - 1.5 * q, height - 1.5 * q],
      [1.5 * q, height - 1.5 * q],
    ],
    2,
  )
  const titled = d.happens(0.7) ? lettering : d.pick(LETTERINGS)
  const [wide, high] = titleBlock(board, titled)
  const list = partsList(board, titled, wide, high)
  notes(board, titled)
  const rooms = viewRooms(board, 9 * q)
  const first = d.whole(0, VIEWS.length - 1)
  rooms.forEach((room, i) => {
    const overList =
      room[0] + room[2] > width - wide - 4 * q && room[1] + room[3] > height - high - list - 6 * q
    const view = VIEWS[(first + i) % VIEWS.length]
    if (view && !overList && room[2] > 8 * q && room[3] > 6 * q) view(board, room)
  })
  board.finish()
  const level: Level = d.happens(0.6) ? 'clean' : 'moderate'
  const ink = inkOf(board.context.getImageData(0, 0, width, height).data, width, height)
  const grey = await scanInk(ink, q, level, d)
  return { grey, lettering, level, ways, figures: board.figures, words: board.words }
}
