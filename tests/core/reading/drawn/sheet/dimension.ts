import { type Board, type Place, readingAngle } from './board.ts'
import { size } from './sizes.ts'

/**
 * A dimension between two points, its line `off` pixels to the right of the way from the first to the second (y downward:
 * below a way to the right). Where its figure finds no room none of it is drawn; `between`: room between its
 * arrowheads, as in a chain.
 */
export function drawDimension(board: Board, from: Place, to: Place, off: number, between = false): void {
  const { ways, d } = board
  const h = ways.height
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const u = [(to[0] - from[0]) / length, (to[1] - from[1]) / length] as const
  const n = [-u[1], u[0]] as const
  const along = (t: number, side: number): Place => [
    from[0] + u[0] * t + n[0] * (off + side),
    from[1] + u[1] * t + n[1] * (off + side),
  ]
  const direction = (Math.atan2(u[1], u[0]) * 180) / Math.PI
  const angle = readingAngle(direction)
  const planned = size(length, ways, d)
  const set = board.set(planned)
  const wide = set.right - set.left
  const fits = length > wide + 3.4 * h
  if (between && !fits) return
  // Over the line is where the figure's own top points.
  const upward = Math.abs(readingAngle(direction) - direction) < 1 ? -1 : 1
  const raised = ways.over && fits ? upward * ((set.bottom - set.top) / 2 + 0.4 * h) : 0
  const middle = fits ? length / 2 : length + 1.8 * h + wide / 2
  const place = board.room(set, along(middle, raised), angle)
  if (!place) return
  board.figure(planned, place)
  const outward = Math.sign(off) * 0.4 * h
  for (const t of [0, length]) {
    const start = along(t, -off + Math.sign(off) * 0.3 * h)
    board.line(start, along(t, outward), 0.45)
  }
  if (fits) {
    const gap = wide / 2 + 0.6 * h
    if (ways.over) board.line(along(0, 0), along(length, 0), 0.45)
    else {
      board.line(along(0, 0), along(length / 2 - gap, 0), 0.45)
      board.line(along(length / 2 + gap, 0), along(length, 0), 0.45)
    }
    board.arrowhead(along(0, 0), direction + 180)
    board.arrowhead(along(length, 0), direction)
    return
  }
  board.line(along(-1.6 * h, 0), along(0, 0), 0.45)
  board.line(along(length, 0), along(length + 1.1 * h, 0), 0.45)
  board.arrowhead(along(0, 0), direction)
  board.arrowhead(along(length, 0), direction + 180)
}
