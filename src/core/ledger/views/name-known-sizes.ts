import { labelBesideId } from '../../job/ids/label.ts'
import type { Reference } from '../../job/model/types.ts'
import { textsIn } from '../../words/name-in.ts'
import type { AnyReason } from '../../words/reason.ts'

/** A known size as a person finds it on the sheet: by its figure, `known size 4 (14 1/4")`, `R4 (14 1/4")`. */
const calledByFigure = (reference: Reference): string => {
  const size = reference.kind === 'rectangle' ? `${reference.width} × ${reference.height}` : reference.size
  return `${labelBesideId(reference) ?? reference.id} (${size})`
}

/** A reason of a view, its known sizes named with their figures. */
export function nameKnownSizes<R extends AnyReason>(reason: R, references: readonly Reference[]): R {
  const said = textsIn(reason)
  const own = references.filter(({ id }) => said.has(id))
  if (own.length === 0) return reason
  const names = Object.fromEntries(own.map((one) => [one.id, calledByFigure(one)]))
  return { ...reason, names: { ...names, ...reason.names } }
}
