import type { Board, Place } from './board.ts'

/** Hatches the inside of a polygon at an angle, as cut metal. */
export function hatch(board: Board, points: readonly Place[], angle: number, gap: number): void {
  const { context } = board
  const first = points[0]
  if (!first) return
  const reach = Math.max(...points.map(([x, y]) => Math.hypot(x - first[0], y - first[1])))
  const turn = (angle * Math.PI) / 180
  context.save()
  context.beginPath()
  for (const point of points) context.lineTo(...point)
  context.closePath()
  context.clip()
  for (let off = -reach; off <= reach; off += gap) {
    const [x, y] = [first[0] - Math.sin(turn) * off, first[1] + Math.cos(turn) * off]
    const [dx, dy] = [Math.cos(turn) * reach, Math.sin(turn) * reach]
    board.line([x - dx, y - dy], [x + dx, y + dy], 0.4)
  }
  context.restore()
}
