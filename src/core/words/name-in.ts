import { mintedFor } from '../job/ids/id-form.ts'
import { type Labelled, labelOf } from '../job/ids/label.ts'
import type { Labels } from '../job/ids/labels-of-job.ts'
import type { AnyReason, LabelsById, Part } from './reason.ts'

function collect(part: Part, into: Set<string>): void {
  if (typeof part === 'string') into.add(part)
  else if (typeof part === 'object' && part !== null) {
    for (const inner of Object.values(part) as Part[]) collect(inner, into)
  }
}

/** Every text that stands in a reason, however deep: ids among them. */
export function textsIn({ parts }: AnyReason): ReadonlySet<string> {
  const texts = new Set<string>()
  collect(parts, texts)
  return texts
}

const mintedIn = (reason: AnyReason): string[] =>
  [...textsIn(reason)].filter((text) => mintedFor(text) !== undefined)

/**
 * A reason with what people call the things that stand in it by minted ids; the same one where there are none. Names that
 * it has already stay: they were given where the things were at hand.
 */
export function nameIn<R extends AnyReason>(reason: R, labels: Labels): R {
  const ids = mintedIn(reason)
  if (ids.length === 0) return reason
  const names: LabelsById = Object.fromEntries(ids.map((id) => [id, labels(id)]))
  return { ...reason, names: { ...names, ...reason.names } }
}

/** The same where only one thing is at hand. */
export const nameItemIn = <R extends AnyReason>(reason: R, item: Labelled): R =>
  mintedFor(item.id) === undefined
    ? reason
    : { ...reason, names: { ...reason.names, [item.id]: labelOf(item) } }

/** The same of some things, whose ids may stand for others elsewhere: those of evidence hold within its dimension. */
export function nameItemsIn<R extends AnyReason>(reason: R, items: readonly Labelled[]): R {
  const ids = mintedIn(reason)
  const own = items.filter(({ id }) => ids.includes(id))
  if (own.length === 0) return reason
  const names: LabelsById = Object.fromEntries(own.map((item) => [item.id, labelOf(item)]))
  return { ...reason, names: { ...names, ...reason.names } }
}
