import type { SKRSContext2D } from '@napi-rs/canvas'
import type { Dice } from './dice.ts'
import { drawArrowhead, drawLine } from './draw-line.ts'
import type { SetFigure } from './set-figure.ts'

const FAR = 4000

/**
 * The lines of a drawing beside a figure, in its own axes. All keep a clear gap from it, of half a digit's height or more,
 * so that none reads as a dash or a 1: common practice, no source.
 */
export function drawSurroundings(context: SKRSContext2D, figure: SetFigure, d: Dice): void {
  const { left, right, top, bottom, height: h } = figure
  const width = h * d.between(0.04, 0.08)
  const middle = (top + bottom) / 2
  const gap = () => h * d.between(0.5, 0.9)
  const tall = Math.max(bottom - top, h) * d.between(1.4, 2.5)
  const end = (x: number, way: 1 | -1) => {
    const y = middle + h * d.between(-0.05, 0.05)
    const stop = x + way * h * d.between(1.2, 4)
    drawLine(context, [x, y], [stop, y], width)
    drawArrowhead(context, [stop, y], way > 0 ? 0 : 180, h * d.between(0.4, 0.7))
    drawLine(context, [stop, y - tall], [stop, y + tall * d.between(0.4, 1.2)], width)
  }
  const form = d.pick(['broken line', 'broken line', 'line under', 'leader', 'witness', 'frame'] as const)
  if (form === 'broken line') {
    end(left - gap(), -1)
    end(right + gap(), 1)
  } else if (form === 'line under') {
    const y = bottom + h * d.between(0.35, 0.7)
    drawLine(context, [left - h * 3, y], [right + h * 3, y], width)
    for (const [x, way] of [
      [left - h * 3, 180],
      [right + h * 3, 0],
    ] as const) {
      drawArrowhead(context, [x, y], way, h * 0.5)
      drawLine(context, [x, y - tall], [x, y + h], width)
    }
  } else if (form === 'leader') {
    const way = d.pick([-1, 1] as const)
    const x = way < 0 ? left - gap() : right + gap()
    drawLine(context, [x, middle], [x + way * h, middle], width)
    drawLine(context, [x + way * h, middle], [x + way * h * 4, middle + h * d.between(-5, 5)], width)
  } else if (form === 'witness') {
    const x = d.happens(0.5) ? left - gap() : right + gap()
    drawLine(context, [x, -FAR], [x, FAR], width)
  } else {
    const y = top - h * d.between(0.6, 1.2)
    drawLine(context, [-FAR, y], [FAR, y], width * 1.8)
  }
}

/** A line of the drawing that runs through the figure and on past it: thinner than the pen, and steep to the reading. */
export function drawCrossing(context: SKRSContext2D, figure: SetFigure, d: Dice): void {
  const { left, right, top, bottom, height: h, face } = figure
  const width = Math.min(0.6 * face.stroke, d.between(0.03, 0.06)) * h
  const x = d.between(left, right)
  const y = (top + bottom) / 2
  // Well off level, and off the lean of a slash or a 1.
  const turn = (d.pick([d.between(15, 40), d.between(130, 165), d.between(84, 96)]) * Math.PI) / 180
  const [dx, dy] = [Math.cos(turn) * FAR, -Math.sin(turn) * FAR]
  const dashes = d.happens(0.3) ? [h * 4, h * 0.3, h * 0.6, h * 0.3] : []
  drawLine(context, [x - dx, y - dy], [x + dx, y + dy], width, dashes)
}
