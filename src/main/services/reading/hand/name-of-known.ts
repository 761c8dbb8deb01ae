import { createHash } from 'node:crypto'
import type { KnownFigure } from '../../../../core/reading/box/known-figure.ts'

/** Signs that tell some dozens of figures apart. */
const LENGTH = 8

/** What tells a known figure of a page from others, in a few signs; it is another once its text is. */
export const nameOfKnown = ({ box, text }: KnownFigure): string =>
  createHash('sha256')
    .update(JSON.stringify([box.x, box.y, box.width, box.height, text]))
    .digest('hex')
    .slice(0, LENGTH)
