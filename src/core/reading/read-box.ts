import type { GreyWindow } from '../imaging/index.ts'
import type { LengthContext } from '../quantity/parse/parse-length.ts'
import type { FigureReading } from './figure-reading.ts'
import type { GlyphNetwork } from './network/glyph-network.ts'

/** A box of a page, pixels; angle: of its lettering, degrees clockwise. */
export interface BoxOfFigure {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
  readonly angle?: number | undefined
}

/** Reads the figure in a box. Here nothing is read yet: every box is told of as empty. */
export function readBox(
  _network: GlyphNetwork,
  _picture: GreyWindow,
  { x, y, width, height, angle = 0 }: BoxOfFigure,
  _context: LengthContext,
): FigureReading {
  return {
    box: [x, y, width, height],
    angle,
    text: null,
    asRead: '',
    value: null,
    kind: null,
    clear: false,
    probability: 0,
    alternatives: [],
    lattice: { slots: [] },
  }
}
