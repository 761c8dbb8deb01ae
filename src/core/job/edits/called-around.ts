import { withNoun } from '../ids/label.ts'
import type { Edit } from '../model/edit-schema.ts'
import { ITEM_KINDS } from '../model/item-kinds.ts'
import type { ThingKind } from '../model/thing-kind.ts'
import type { Job } from '../model/types.ts'
import { calledOf, isNamed, NAMED } from '../names/called-of.ts'
import { labelsAround } from './apply/labels-around.ts'

/** What something is called, with its noun: `circle 12`, `view “Elevation”`, `dimension drum_length`. */
export type Called = (kind: ThingKind, id: string) => string

/** What goes before the label of a thing, where that has no noun of its own. */
const nounOf = (kind: ThingKind): string => (kind === 'reference' ? 'figured size' : kind)

function* addedBy(edit: Edit): Generator<[kind: string, item: object]> {
  if (edit.do === 'several') for (const one of edit.edits) yield* addedBy(one)
  else if ('item' in edit) yield [edit.do.slice('add-'.length), edit.item]
}

/** What things are called that edits name: those that they add themselves, and those of a job where that is known. */
export function calledAround(job: Job | undefined, ...edits: readonly (Edit | undefined)[]): Called {
  const labels = labelsAround(job, ...edits)
  const named = (kind: keyof typeof NAMED, id: string): string => {
    const isIt = (item: object): boolean => (item as { id?: unknown }).id === id
    const there: object | undefined = job?.[ITEM_KINDS[kind].list].find(isIt)
    const item = there ?? addedAmong(edits, kind, isIt)
    const name = (item as Record<string, unknown> | undefined)?.[NAMED[kind]]
    return typeof name === 'string' && name !== '' ? calledOf(kind, name) : withNoun(kind, id, labels(id))
  }
  return (kind, id) => (isNamed(kind) ? named(kind, id) : withNoun(nounOf(kind), id, labels(id)))
}

function addedAmong(
  edits: readonly (Edit | undefined)[],
  wanted: string,
  isIt: (item: object) => boolean,
): object | undefined {
  for (const edit of edits) {
    for (const [kind, item] of edit === undefined ? [] : addedBy(edit))
      if (kind === wanted && isIt(item)) return item
  }
  return undefined
}
