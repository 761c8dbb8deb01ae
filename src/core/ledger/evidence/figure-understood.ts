import type { Figure } from '../../quantity/figure.ts'
import { formatFigure, withCommas } from '../../quantity/format/format-figure.ts'
import { formatFit } from '../../quantity/format/format-fit.ts'
import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'

/** How a figure is understood, for whoever wrote it down. */
export interface Understood {
  /** Its size with how many and what it may be off by: `8 of 5/8"`. */
  readonly as: string
  /** What it is of and what else stands in it, one sentence each. */
  readonly also: readonly AnyReason[]
}

const LOOSE = { about: 'about ', full: 'a little over ', bare: 'a little under ' }

/** A tolerance alone, as figures have it. */
function toleranceOf({ tolerance, angleTolerance, twoLimits, fit }: Figure): string {
  if (fit !== undefined) return ` ${formatFit(fit)}`
  if (twoLimits || (tolerance ?? angleTolerance) === undefined) return ''
  const alone: Figure = {
    text: '',
    of: 'length',
    typical: false,
    drilled: false,
    ...(tolerance && { tolerance }),
    ...(angleTolerance && { angleTolerance }),
  }
  return ` ${formatFigure(alone)}`
}

/**
 * Says how a figure is understood.
 *
 * @param written its size, in the unit that is looked at
 */
export function figureUnderstood(figure: Figure, written: string): Understood {
  const { count, of, limit, looseness, twoLimits, tolerance } = figure
  const size = twoLimits && tolerance ? formatFigure({ ...bare(figure), twoLimits, tolerance }) : written
  const loose = looseness === undefined ? '' : LOOSE[looseness]
  const side = limit === undefined ? '' : limit === 'max' ? 'at most ' : 'at least '
  const many = count === undefined || of === 'count' ? '' : `${count} of `
  const as = `${many}${side}${loose}${size}${toleranceOf(figure)}`
  return { as: figure.decimalComma ? withCommas(as) : as, also: alsoSaid(figure) }
}

/** The size of a figure alone. */
const bare = ({ text, length }: Figure): Figure => ({
  text,
  of: 'length',
  typical: false,
  drilled: false,
  ...(length && { length }),
})

function alsoSaid({ of, fastener, thread, side, square, notes }: Figure): AnyReason[] {
  const also: AnyReason[] = []
  if (of === 'diameter' || of === 'radius' || of === 'centres') {
    also.push(reason('understood.of', { of, ...(side && { side }) }))
  }
  if (square) also.push(reason('understood.of', { of: 'square' }))
  if (fastener !== undefined) also.push(reason('understood.fastener', { fastener }))
  if (thread !== undefined) also.push(reason('understood.thread', { ...thread }))
  if (notes !== undefined) also.push(reason('understood.notes', { notes }))
  return also
}
