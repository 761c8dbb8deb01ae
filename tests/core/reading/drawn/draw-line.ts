import type { SKRSContext2D } from '@napi-rs/canvas'

type Place = readonly [number, number]

/** A straight stroke of a ruling pen, or several of a chain line. */
export function drawLine(
  context: SKRSContext2D,
  from: Place,
  to: Place,
  width: number,
  dashes: readonly number[] = [],
): void {
  context.lineWidth = Math.max(0.8, width)
  context.lineCap = 'butt'
  context.setLineDash([...dashes])
  context.beginPath()
  context.moveTo(...from)
  context.lineTo(...to)
  context.stroke()
  context.setLineDash([])
}

/** An arrowhead whose tip is at a place and which points that way, degrees clockwise from x. */
export function drawArrowhead(context: SKRSContext2D, [x, y]: Place, points: number, length: number): void {
  const turn = (points * Math.PI) / 180
  context.save()
  context.translate(x, y)
  context.rotate(turn)
  context.beginPath()
  context.moveTo(0, 0)
  context.lineTo(-length, length * 0.18)
  context.lineTo(-length, -length * 0.18)
  context.closePath()
  context.fill()
  context.restore()
}
