import { labelOf } from '../../job/ids/label.ts'
import type { Reference } from '../../job/model/types.ts'
import { textsIn } from '../../words/name-in.ts'
import type { AnyReason } from '../../words/reason.ts'

/** The figure of a figured size as it is written; of a rectangle both. */
const figureOf = (reference: Reference): string =>
  reference.kind === 'rectangle' ? `${reference.width} × ${reference.height}` : reference.size

/**
 * A figured size as a person finds it on the sheet: by its figure, `14 1/4"`; by its label as well where another of its view
 * has the same, `14 1/4" (R4)`.
 * @param references all of its view
 */
export function calledByFigure(reference: Reference, references: readonly Reference[]): string {
  const figure = figureOf(reference)
  const mixedUp = references.some((other) => other.id !== reference.id && figureOf(other) === figure)
  return mixedUp ? `${figure} (${labelOf(reference)})` : figure
}

/** A reason of a view, its figured sizes named with their figures. */
export function nameKnownSizes<R extends AnyReason>(reason: R, references: readonly Reference[]): R {
  const said = textsIn(reason)
  const own = references.filter(({ id }) => said.has(id))
  if (own.length === 0) return reason
  const names = Object.fromEntries(own.map((one) => [one.id, calledByFigure(one, references)]))
  return { ...reason, names: { ...names, ...reason.names } }
}
