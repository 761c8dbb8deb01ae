import type { PlannedFigure } from '../figure-parts.ts'
import type { Board, Place } from './board.ts'

/** A call-out on a leader: from what it is of, out at an angle (degrees clockwise from x), and level to its figure. */
export function drawCallOut(
  board: Board,
  of: Place,
  out: number,
  reach: number,
  figure: PlannedFigure,
): void {
  const h = board.ways.height
  const turn = (out * Math.PI) / 180
  const knee: Place = [of[0] + Math.cos(turn) * reach, of[1] + Math.sin(turn) * reach]
  const way = Math.cos(turn) >= 0 ? 1 : -1
  const set = board.set(figure)
  const end: Place = [knee[0] + way * h, knee[1]]
  const place = board.room(set, [end[0] + way * (0.6 * h + (set.right - set.left) / 2), end[1]], 0)
  if (!place) return
  board.figure(figure, place)
  board.line(of, knee, 0.45)
  board.line(knee, end, 0.45)
  board.arrowhead(of, out + 180)
}
