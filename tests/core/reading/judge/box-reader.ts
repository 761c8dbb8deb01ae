import { glyphReader } from '../../../../src/core/reading/box/glyph-reader.ts'
import { readBox } from '../../../../src/core/reading/box/read-box.ts'
import { dice } from '../drawn/dice.ts'
import type { DrawnFigure } from '../drawn/draw-figure.ts'
import type { Reader } from './score-reader.ts'

/** A box as a person drags it round a figure: upright on the page, whichever way the figure runs, with some room. */
export function draggedBox({ frame, height }: DrawnFigure, seed: number) {
  const d = dice(seed, Math.round(1000 * frame.centre[0]), Math.round(1000 * frame.centre[1]))
  const [x, y, width, box] = frame.box
  const [left, right, top, bottom] = [0, 1, 2, 3].map(() => height * d.between(0.08, 0.45)) as [
    number,
    number,
    number,
    number,
  ]
  return { x: x - left, y: y - top, width: width + left + right, height: box + top + bottom }
}

/**
 * Reads each figure in a box dragged round it; nothing else of its frame is told.
 * @param reader as it was trained, unless one is given that knows a hand
 */
export function boxReader(seed = 1, reader = glyphReader()): Reader {
  return async (figure) => {
    const { width, height, pixels } = figure.grey
    const picture = { left: 0, top: 0, width, height, data: pixels }
    return readBox(reader, picture, draggedBox(figure, seed), { unit: figure.unit })
  }
}
