import type { GreyWindow } from '../../../../../src/core/imaging/window/grey-window.ts'
import { dice } from '../dice.ts'
import { planned } from '../figure-parts.ts'
import type { LetteringName } from '../letterings.ts'
import { inkOf, scanInk } from '../scan-ink.ts'
import { Board, type SheetFigure, type SheetWords } from './board.ts'
import { drawDimension } from './dimension.ts'

const [WIDE, HIGH] = [1100, 720]

/**
 * A part of a sheet, for tests that must be quick: a plate with its dimensions level, upright and along a slope, figures
 * that stand by themselves, a two-line call-out, and a list of parts beside.
 */
export async function smallSheet(
  seed: number,
  lettering: LetteringName,
): Promise<{ picture: GreyWindow; figures: readonly SheetFigure[]; words: readonly SheetWords[] }> {
  const d = dice(seed, 23)
  const height = 24
  const ways = {
    unit: 'in',
    lettering,
    height,
    layout: 'stacked',
    over: true,
    outline: 3,
    scale: 40,
  } as const
  const board = new Board(WIDE, HIGH, ways, d)
  const corners = [
    [200, 150],
    [520, 150],
    [660, 320],
    [660, 460],
    [200, 460],
  ] as const
  board.outline(corners)
  const [first, second, third, fourth, last] = corners
  drawDimension(board, first, second, -70)
  drawDimension(board, second, third, -70)
  drawDimension(board, last, fourth, 80)
  drawDimension(board, first, last, 80)
  const alone = [
    ['3 HOLES\nDRILL 5/8', 400, 300],
    [`${d.whole(2, 9)} ${d.pick(['1/2', '3/4', '7/8'])}"`, 330, 410],
    [`R ${d.whole(2, 9)}`, 250, 230],
    [`${d.whole(10, 80)}°`, 560, 420],
  ] as const
  for (const [written, x, y] of alone) {
    const figure = planned(written, 'in')
    const place = board.room(board.set(figure), [x, y], 0)
    if (place !== undefined) board.figure(figure, place)
  }
  const list = ['PLATE', 'COVER', 'STRAP'] as const
  for (const [i, piece] of list.entries()) {
    const y = 540 + 48 * i
    board.letter(String(i + 1), [770, y], 22, lettering)
    board.letter(piece, [820, y], 22, lettering)
    board.letter(String(d.whole(2, 8)), [970, y], 22, lettering)
    board.line([750, y + 12], [1060, y + 12], 0.6)
  }
  board.finish()
  const ink = inkOf(board.context.getImageData(0, 0, WIDE, HIGH).data, WIDE, HIGH)
  const { width, height: high, pixels } = await scanInk(ink, height, 'clean', d)
  return {
    picture: { left: 0, top: 0, width, height: high, data: pixels },
    figures: board.figures,
    words: board.words,
  }
}
